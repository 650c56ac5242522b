// Beside the page, in a worker: fetches and compiles the program, reads what the start needs and brings it to the page.
// Then it rehearses the start: a browser compiles a function when it is first called, for all threads at once, so the
// page finds done what this one was quicker to call.
import { Spare } from './spare.js';
import { Store } from './store.js';

const kScripts = './main.js'; // another bundle, which takes longer to be there

const tell = (name, value, moved = []) => postMessage({ name, value }, moved);
const fetched = (name) => fetch(name).then((answer) => answer.ok ? answer : Promise.reject(new Error(`${name} was not found`)));

async function compiled(answer) {
    const streams = answer.headers.get('Content-Type')?.startsWith('application/wasm');
    return streams ? WebAssembly.compileStreaming(answer) : WebAssembly.compile(await answer.arrayBuffer());
}

// What it brings, to the page; a copy of it stays here.
async function share(name, promise) {
    const value = await promise;
    tell(name, value);
    return value;
}

// The letters of an earlier start; an ArrayBuffer, or null.
async function lettersOf(cacheName) {
    const answer = await globalThis.caches?.match('letters', { cacheName });
    return await answer?.arrayBuffer() ?? null;
}

async function rehearse({ createCotter, Blobs, layOutBook, layOutLetters }, module, { files, letters, book, size }) {
    const nothing = () => 0;
    const Module = await createCotter({
        host: new Proxy({ blobs: new Blobs(), storage: () => ({ used: 0, room: 0, mayBeCleared: false }), trouble: () => '' },
            { get: (known, name) => known[name] ?? nothing }),
        getPreloadedPackage: () => files,
        instantiateWasm: (imports, ready) => {
            WebAssembly.instantiate(module, imports).then((instance) => ready(instance, module));
            return {};
        },
    });
    layOutLetters(Module.FS, letters);
    layOutBook(Module.FS, book);
    Module.ccall('cotter_rehearse', null, ['number', 'number', 'number'], size);
}

async function start() {
    const order = new Promise((resolve) => { onmessage = ({ data }) => resolve(data); });
    const program = fetched('cotter.wasm').then(compiled);
    const scripts = import(kScripts);
    const files = share('files', fetched('cotter.data').then((answer) => answer.arrayBuffer()));
    for (const promise of [program, scripts, files]) promise.catch(() => {}); // each is awaited below
    const { read, letters: cacheName, size } = await order;
    if (!read) return; // another page has the book
    const letters = share('letters', lettersOf(cacheName).catch(() => null));
    const book = share('book', new Store().load());
    await Promise.all([share('spare', Spare.find()), share('program', program)]);
    const copies = { files: await files, letters: await letters, book: (await book).files, size };
    await rehearse(await scripts, await program, copies).catch(() => {}); // the page does without
}

tell('begun');
start().catch((error) => tell('trouble', { name: error?.name, message: String(error?.message ?? error) })).then(close);
