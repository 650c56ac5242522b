// Keeps the program's book in the store. The program writes into memory, as if to a disk; after each frame what changed
// goes into the store in one transaction: the changed chunks of the book's files and the new photos together. What the
// program calls written counts up; `kept` follows when the transaction is complete, and 'saved' is shown only then.

import { kChunk } from './store.js';

const kRetry = 3000; // ms
const kBook = '/book';
const passing = (path) => path.startsWith('/inbox/') || path.startsWith('/book/packets/') || path.endsWith('.part');

function words(error) {
    if (error?.name === 'QuotaExceededError')
        return 'this device has no room left; free some space or send the packet. It is tried again by itself';
    return `the browser did not keep it (${error?.name ?? 'unknown'}). It is tried again by itself`;
}

export class Disk {
    #store; #fs = null; #changed;
    #shadow = new Map();    // path -> the bytes as the store has them
    #looked = 0;            // when the files were looked at last, ms
    #dirtyBlobs = new Set();
    #busy = false; #again = false; #retry = 0;
    #wrote = 0;
    kept = 0;
    trouble = '';

    // `changed` is called when `kept` or `trouble` is another one.
    constructor(store, blobs, changed) {
        this.#store = store;
        this.blobs = blobs;
        this.#changed = changed;
        blobs.changed = (path) => { if (!passing(path)) this.#dirtyBlobs.add(path); };
    }

    restore(fs, kept) {
        this.#fs = fs;
        if (!fs.analyzePath(kBook).exists) fs.mkdir(kBook);
        for (const path of this.#paths()) fs.unlink(path);
        for (const [path, bytes] of kept.files) fs.writeFile(path, bytes);
        this.#shadow = new Map(kept.files);
        for (const [path, blob] of kept.blobs ?? []) this.blobs.set(path, blob);
        this.#dirtyBlobs.clear();
        this.#looked = Date.now() + 1;
    }

    // The book goes back to an earlier image; the store follows with the next commit.
    goBack(files) {
        for (const path of this.#paths()) this.#fs.unlink(path);
        for (const [path, bytes] of files) this.#fs.writeFile(path, bytes);
        this.#looked = 0;
    }

    written() { return ++this.#wrote; }
    get settled() { return !this.#busy && this.kept === this.#wrote && this.trouble === ''; }
    files() { return this.#paths().map((path) => [path, this.#bytes(path).slice()]); }

    #paths() {
        return this.#fs.readdir(kBook).map((name) => `${kBook}/${name}`)
            .filter((path) => this.#fs.isFile(this.#fs.stat(path).mode) && !path.endsWith('/in-use'));
    }

    #bytes(path) {
        const node = this.#fs.lookupPath(path).node;
        return node.contents ? node.contents.subarray(0, node.usedBytes) : new Uint8Array(0);
    }

    // The chunks in which the file differs from what the store has, and that from then on.
    #difference(path) {
        const now = this.#bytes(path);
        const before = this.#shadow.get(path) ?? new Uint8Array(0);
        const chunks = [];
        for (let at = 0; at < now.length; at += kChunk) {
            const part = now.subarray(at, at + kChunk);
            if (!same(part, before.subarray(at, at + kChunk))) chunks.push([at / kChunk, part.slice()]);
        }
        if (chunks.length === 0 && now.length === before.length) return null;
        this.#shadow.set(path, now.slice());
        return { path, size: now.length, chunks, from: Math.ceil(now.length / kChunk) };
    }

    #collect() {
        const since = this.#looked - 20; // its clock has whole milliseconds
        this.#looked = Date.now();
        const paths = this.#paths();
        const files = paths.filter((path) => this.#fs.stat(path).mtime.getTime() >= since)
            .map((path) => this.#difference(path)).filter((file) => file !== null);
        const gone = [...this.#shadow.keys()].filter((path) => !paths.includes(path));
        for (const path of gone) this.#shadow.delete(path);
        const blobs = [], blobsGone = [];
        for (const path of this.#dirtyBlobs) {
            const blob = this.blobs.get(path);
            if (blob) blobs.push([path, blob]); else blobsGone.push(path);
        }
        this.#dirtyBlobs.clear();
        return { files, gone, blobs, blobsGone };
    }

    // After each frame.
    async keep() {
        if (this.#busy) { this.#again = true; return; }
        const wrote = this.#wrote;
        const change = this.#collect();
        if (change.files.length + change.gone.length + change.blobs.length + change.blobsGone.length === 0) {
            this.#tell(wrote, this.trouble);
            return;
        }
        this.#busy = true;
        this.#again = false;
        try {
            await this.#store.commit(change);
            this.#busy = false;
            this.#tell(wrote, '');
            this.#onDisk(change.blobs);
            if (this.#again) this.keep();
        } catch (error) {
            this.#busy = false;
            for (const { path } of change.files) this.#shadow.delete(path); // whole files next time
            for (const path of change.gone) this.#shadow.set(path, new Uint8Array(1));
            for (const [path] of change.blobs) this.#dirtyBlobs.add(path);
            for (const path of change.blobsGone) this.#dirtyBlobs.add(path);
            this.#looked = 0;
            this.#tell(this.kept, words(error));
            clearTimeout(this.#retry);
            this.#retry = setTimeout(() => this.keep(), kRetry);
        }
    }

    #tell(kept, trouble) {
        if (this.trouble !== '' && trouble !== '') kept = this.kept;
        if (kept === this.kept && trouble === this.trouble) return;
        this.kept = kept;
        this.trouble = trouble;
        this.#changed();
    }

    // What was just written is read from the store from now on, not from memory.
    async #onDisk(blobs) {
        for (const [path, blob] of blobs) {
            const stored = await this.#store.blob(path).catch(() => undefined);
            if (stored && this.blobs.get(path) === blob) this.blobs.replace(path, stored);
        }
    }
}

function same(a, b) {
    if (a.length !== b.length) return false;
    for (let i = 0; i < a.length; ++i) if (a[i] !== b[i]) return false;
    return true;
}
