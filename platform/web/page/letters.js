// Letters that one start has baked, for the next one of the same program: in a cache that is named after the program.

const kFile = '/letters/kept'; // as browser_ports.h has it
const kCaches = 'letters-';
export const kLetters = kCaches + PROGRAM; // a sum over the program, put in when the site is laid out

// To where the program finds them; `bytes` null: there are none.
export function layOutLetters(blobs, bytes) {
    if (bytes) blobs.lay(kFile, new Uint8Array(bytes));
}

// Those that the program has put there, in place of those of other programs.
export async function keepLetters(blobs) {
    const letters = blobs.get(kFile);
    blobs.remove(kFile);
    for (const name of await caches.keys()) if (name.startsWith(kCaches) && name !== kLetters) await caches.delete(name);
    await (await caches.open(kLetters)).put('letters', new Response(letters));
}
