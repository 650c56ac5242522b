// A second copy of the book, apart from the first: in the browser's cache storage, which is kept in other files by other
// code. A browser that finds its database damaged throws all of it away and says nothing; then the book comes back from
// here. It follows the first copy by a moment and counts the same marks, so a mark ahead of the first one's tells the loss.
// When room is short it is given up before anything else.
//
// When the first copy cannot be read this one goes on alone, and remembers the mark at which it left the first one: only
// if that has not gone on by itself does its work count.
//
// Chunks and photos are entries of their own, never overwritten; the entry 'image' names those that make the book, and
// is written last.

import { kChunk } from './store.js';

const kCache = 'book-spare';
const kRoom = 3; // given up unless there is room for so many times what is held

const at = (name) => new URL(`spare/${name}`, location.href).href;

export class Spare {
    #cache = null;  // opened when it is first needed; null then: not offered
    #image = null;  // {mark, left, at, next, files: {path: {size, chunks: [name]}}, blobs: {path: name}}, or null: none is kept
    #work = Promise.resolve();
    #waiting = 0;

    get settled() { return this.#waiting === 0; }

    // The image that is kept, or null: for an object that goes on with it, in this thread or another.
    static async find() {
        try {
            return await (await caches.match(at('image'), { cacheName: kCache }))?.json() ?? null;
        } catch {
            return null; // not offered without a secure connection
        }
    }

    goOn(image) { this.#image = image; }
    get mark() { return this.#image?.mark ?? -1; } // -1: there is none
    get at() { return this.#image?.at ?? 0; }      // ms: when it was last changed

    // Whether it has all that a first copy with this mark has, and more.
    isAhead(mark) { return this.mark > mark && (this.#image.left ?? this.mark) >= mark; }

    // Whether it has changes that were made alone, and a first copy with this mark has others.
    hasParted(mark) { return this.#image?.left !== undefined && this.#image.left < mark; }

    async #open() { return this.#cache ??= await globalThis.caches?.open(kCache) ?? null; }

    // {at: ms, files: Map of path to bytes, blobs: Map of path to Blob}; null when a part of a file is missing. A photo that
    // is missing takes nothing else along: the book names it still.
    async load() {
        const cache = await this.#open();
        const { files, blobs, at: time } = this.#image;
        const out = { at: time, files: new Map(), blobs: new Map() };
        for (const [path, { size, chunks }] of Object.entries(files)) {
            const bytes = new Uint8Array(size);
            for (const [index, name] of chunks.entries()) {
                const part = await (await cache.match(at(name)))?.arrayBuffer();
                if (part?.byteLength !== Math.min(kChunk, size - index * kChunk)) return null;
                bytes.set(new Uint8Array(part), index * kChunk);
            }
            out.files.set(path, bytes);
        }
        for (const [path, name] of Object.entries(blobs)) {
            const blob = await (await cache.match(at(name)))?.blob();
            if (blob) out.blobs.set(path, blob);
        }
        return out;
    }

    // The change is what the first copy was just given, `mark` what it counts since. In turn with all others: while the
    // whole book is still being copied, what changes meanwhile follows it.
    keep(change, mark) {
        this.#soon(() => this.#write(change, mark));
    }

    // The same while there is no first copy. Nothing is given up when it fails; the caller is told.
    async keepAlone(change, mark) {
        const work = this.#work.then(() => this.#write(change, mark, this.#image.left ?? this.#image.mark));
        this.#work = work.catch(() => {});
        await work;
    }

    // Once a start: all that the first copy holds, when this one is behind it.
    catchUp(files, blobs, mark) {
        if (this.#image?.mark === mark && this.#image.left === undefined) return;
        this.#soon(async () => {
            if (!await this.#open()) return;
            const { quota = 0, usage = 0 } = await navigator.storage?.estimate?.() ?? {};
            const held = [...blobs].reduce((sum, [, blob]) => sum + blob.size, 0);
            if (quota - usage < kRoom * held) return this.#giveUp();
            const gone = Object.keys(this.#image?.files ?? {}).filter((path) => !files.has(path));
            const blobsGone = Object.keys(this.#image?.blobs ?? {}).filter((path) => !blobs.has(path));
            const news = [...blobs].filter(([path]) => !this.#image?.blobs[path]);
            this.#image ??= { next: 1, files: {}, blobs: {} };
            await this.#write({ files: [...files].map(whole), gone, blobs: news, blobsGone }, mark);
            await this.#sweep();
        });
    }

    // Gives its room back; true when there was any.
    async shed() {
        const had = this.#image !== null;
        this.#soon(() => this.#giveUp());
        await this.#work;
        return had;
    }

    #soon(work) {
        ++this.#waiting;
        this.#work = this.#work.then(work).catch(() => this.#giveUp()).finally(() => { --this.#waiting; });
    }

    async #giveUp() {
        this.#image = null;
        const cache = await this.#open().catch(() => null);
        for (const request of await cache?.keys() ?? []) await cache.delete(request);
    }

    async #write(change, mark, left = undefined) {
        if (!this.#image) return; // not copied yet, or given up
        const next = structuredClone(this.#image);
        const old = [];
        const cache = await this.#open();
        const put = async (body) => {
            const name = String(next.next++);
            await cache.put(at(name), new Response(body));
            return name;
        };
        for (const { path, size, chunks, from } of change.files) {
            const names = next.files[path]?.chunks ?? [];
            for (const [index, bytes] of chunks) {
                if (names[index]) old.push(names[index]);
                names[index] = await put(bytes);
            }
            old.push(...names.splice(from));
            next.files[path] = { size, chunks: names };
        }
        for (const path of change.gone) {
            old.push(...next.files[path]?.chunks ?? []);
            delete next.files[path];
        }
        for (const [path, blob] of change.blobs) {
            if (next.blobs[path]) old.push(next.blobs[path]);
            next.blobs[path] = await put(blob);
        }
        for (const path of change.blobsGone) {
            if (next.blobs[path]) old.push(next.blobs[path]);
            delete next.blobs[path];
        }
        Object.assign(next, { mark, left, at: Date.now() });
        await cache.put(at('image'), new Response(JSON.stringify(next)));
        this.#image = next;
        for (const name of old) await cache.delete(at(name));
    }

    // What a kill left behind.
    async #sweep() {
        const { files, blobs } = this.#image;
        const held = new Set([...Object.values(files).flatMap(({ chunks }) => chunks), ...Object.values(blobs), 'image'].map(at));
        const cache = await this.#open();
        for (const { url } of await cache.keys()) if (!held.has(url)) await cache.delete(url);
    }
}

function whole([path, bytes]) {
    const chunks = [];
    for (let index = 0; index * kChunk < bytes.length; ++index)
        chunks.push([index, bytes.slice(index * kChunk, (index + 1) * kChunk)]);
    return { path, size: bytes.length, chunks, from: chunks.length };
}
