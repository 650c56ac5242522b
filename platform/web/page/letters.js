// Letters that one start has baked, for the next one of the same program: in a cache that is named after the program.

const kFolder = '/letters', kFile = '/letters/kept'; // as browser_ports.h has it
const kCaches = 'letters-';
export const kLetters = kCaches + PROGRAM; // a sum over the program, put in when the site is laid out

// Into the program's memory; `bytes` null: there are none.
export function layOutLetters(fs, bytes) {
    fs.mkdir(kFolder);
    if (bytes) fs.writeFile(kFile, new Uint8Array(bytes));
}

// Out of the program's memory, in place of those of other programs.
export async function keepLetters(fs) {
    const bytes = fs.readFile(kFile);
    fs.unlink(kFile);
    for (const name of await caches.keys()) if (name.startsWith(kCaches) && name !== kLetters) await caches.delete(name);
    await (await caches.open(kLetters)).put('letters', new Response(bytes));
}
