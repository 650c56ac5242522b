// A second program beside the page, for long work: takes photos in and makes packets. It has no book: each order brings
// what it needs, each answer takes along the blobs that were made.
import { Blobs, createCotter } from './main.js';

let program = null;

async function start(module) {
    const blobs = new Blobs();
    const host = { blobs };
    const Module = await createCotter({
        host,
        instantiateWasm: (imports, ready) => {
            WebAssembly.instantiate(module, imports).then((instance) => ready(instance, module));
            return {};
        },
    });
    return { Module, blobs };
}

async function carryOut({ order, json, blobs: brought }) {
    const { Module, blobs } = await program;
    const made = new Set();
    blobs.changed = () => {};
    for (const [path, blob] of brought) blobs.set(path, blob);
    blobs.changed = (path) => made.add(path);
    const answer = Module.ccall('cotter_carry_out', 'string', ['string'], [json]);
    const out = [...made].map((path) => [path, blobs.get(path)]).filter(([, blob]) => blob);
    blobs.clear();
    postMessage({ order, json: answer, blobs: out });
}

onmessage = ({ data }) => {
    if (data.module) program = start(data.module);
    else carryOut(data).catch((error) => setTimeout(() => { throw error; }));
};
