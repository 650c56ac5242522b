// Beside the page, in a worker: fetches and compiles the program, reads what the start needs and brings it to the page.
// Then it rehearses the start: a browser compiles a function when it is first called, for all threads at once, so the
// page finds done what this one was quicker to call.
import { kLetters } from './letters.js';
import { kLock } from './lock.js';
import { pretend } from './nowhere.js';
import { Spare } from './spare.js';
import { storageFacts } from './storage.js';
import { Store } from './store.js';

const kScripts = './main.js'; // another bundle, which takes longer to be there
const kTries = 5, kTryAgain = 200; // ms; a page that is loaded anew may still have the book, or its database, for a moment

const tell = (name, value, moved = []) => postMessage({ name, value }, moved);
const later = (ms) => new Promise((resolve) => setTimeout(resolve, ms));
const fetched = (name) => fetch(name).then((answer) => answer.ok ? answer : Promise.reject(new Error(`${name} was not found`)));

async function compiled(answer) {
    const streams = answer.headers.get('Content-Type')?.startsWith('application/wasm');
    return streams ? WebAssembly.compileStreaming(answer) : WebAssembly.compile(await answer.arrayBuffer());
}

// What it brings, to the page; it stays here too. Bytes are copied here, so that the page need not.
async function share(name, promise) {
    const value = await promise;
    if (value instanceof ArrayBuffer) {
        const copy = value.slice();
        tell(name, copy, [copy]);
    } else {
        tell(name, value);
    }
    return value;
}

// The letters of an earlier start; an ArrayBuffer, or null.
async function lettersOf() {
    const answer = await globalThis.caches?.match('letters', { cacheName: kLetters });
    return await answer?.arrayBuffer() ?? null;
}

// As the store has it; {unread: why, …} when the browser does not open its database.
async function bookOf() {
    for (let tries = 1;; ++tries) {
        try {
            return await new Store().load();
        } catch (error) {
            const unread = error?.name ?? 'unknown';
            if (tries === kTries || unread === 'TimeoutError') return { unread, files: new Map(), blobs: new Map(), mark: 0 };
            await later(kTryAgain);
        }
    }
}

// Whether the book is ours: two pages would write over each other's. Held as long as this thread lives.
async function hold() {
    const got = () => new Promise((resolve) => {
        navigator.locks.request(kLock, { ifAvailable: true }, (lock) => {
            resolve(lock !== null);
            return lock === null ? undefined : new Promise(() => {});
        });
    });
    if (!navigator.locks) return true;
    for (let tries = 0; tries < kTries; ++tries) {
        if (await got()) return true;
        await later(kTryAgain);
    }
    return false;
}

// The page waits for the lock: when this thread ends no other page gets it.
async function awaited() {
    while (navigator.locks && !(await navigator.locks.query()).pending.some(({ name }) => name === kLock))
        await later(100);
}

// The program ready to start, as the page has it, but with a host that does nothing.
async function prepare([{ createCotter, Blobs }, module, files]) {
    const nothing = () => 0;
    const blobs = new Blobs();
    const known = { blobs, storage: () => ({ used: 0, room: 0, mayBeCleared: false }), trouble: () => '' };
    const Module = await createCotter({
        host: new Proxy(known, { get: (host, name) => host[name] ?? nothing }),
        getPreloadedPackage: () => files,
        instantiateWasm: (imports, ready) => {
            WebAssembly.instantiate(module, imports).then((instance) => ready(instance, module));
            return {};
        },
    });
    return { Module, blobs };
}

function rehearse({ layOutBook, layOutLetters }, { Module, blobs }, { letters, book, size }) {
    Module.canvas = pretend(...size);
    layOutLetters(blobs, letters);
    layOutBook(Module.FS, book);
    const call = (name, ...values) => Module.ccall(name, 'number', values.map(() => 'number'), values);
    call('cotter_open', ...size, 0, 0, 0, 0, 0);
    call('cotter_frame', 0);
    call('cotter_mirror');
    call('cotter_read_ahead');
}

async function start() {
    const order = new Promise((resolve) => { onmessage = ({ data }) => resolve(data); });
    const ours = share('ours', hold());
    const program = share('program', fetched('cotter.wasm').then(compiled));
    const files = share('files', fetched('cotter.data').then((answer) => answer.arrayBuffer()));
    const scripts = import(kScripts);
    const prepared = Promise.all([scripts, program, files]).then(prepare);
    for (const promise of [program, files, prepared]) promise.catch(() => {}); // each is awaited below
    if (!await ours) return; // another page has it
    const [book, letters] = await Promise.all([share('book', bookOf()), share('letters', lettersOf().catch(() => null)),
        share('spare', Spare.find()), share('storage', storageFacts().catch(() => ({}))), program, files]);
    try {
        rehearse(await scripts, await prepared, { letters, book: book.files, ...await order });
    } catch { /* the page does without */ }
    await awaited();
}

tell('begun');
start().catch((error) => tell('trouble', { name: error?.name, message: String(error?.message ?? error) })).then(close);
