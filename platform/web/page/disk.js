// Keeps the program's book in the store. The program writes into memory, as if to a disk; after each frame what changed
// goes into the store in one transaction: the changed chunks of the book's files and the new photos together. What the
// program calls written counts up; `kept` follows when the transaction is complete, and 'saved' is shown only then. The
// spare copy follows. When the store cannot be read the spare copy goes on alone, and nothing is called saved.

import { kChunk } from './store.js';

const kRetry = 3000; // ms
const kBook = '/book';
const kAlone = 'this browser does not open its database, only a second copy is kept; send the packet, then close all of the browser and open this page again';
const passing = (path) => path.startsWith('/inbox/') || path.startsWith('/letters/') || path.startsWith('/book/packets/') || path.endsWith('.part');

function words(error) {
    if (error?.name === 'QuotaExceededError')
        return 'this device has no room left; free some space or send the packet. It is tried again by itself';
    return `the browser did not keep it (${error?.name ?? 'unknown'}). It is tried again by itself`;
}

export class Disk {
    #store; #spare; #fs = null; #changed;
    #mark = 0;              // the commits so far
    #shadow = new Map();    // path -> the bytes as the store has them
    #looked = 0;            // when the files were looked at last, ms
    #dirtyBlobs = new Set();
    #alone = false;         // the store cannot be read: the spare copy is all there is
    #busy = false; #again = false; #retry = 0;
    #wrote = 0;
    kept = 0;
    trouble = '';

    // `changed` is called when `kept` or `trouble` is another one.
    constructor(store, spare, blobs, changed) {
        this.#store = store;
        this.#spare = spare;
        this.blobs = blobs;
        this.#changed = changed;
        blobs.changed = (path) => { if (!passing(path)) this.#dirtyBlobs.add(path); };
    }

    restore(fs, kept) {
        this.#fs = fs;
        this.#mark = kept.mark;
        layOutBook(fs, kept.files);
        this.#shadow = new Map(kept.files);
        for (const [path, blob] of kept.blobs) this.blobs.set(path, blob);
        this.#dirtyBlobs.clear();
        this.#looked = Date.now() + 1;
    }

    // The same from the spare copy, when the store has lost what it had; the store follows with the next commit.
    restoreSpare(fs, lost, spare) {
        this.restore(fs, lost);
        this.goBack(spare.files);
        for (const path of lost.blobs.keys()) if (!spare.blobs.has(path)) this.blobs.remove(path);
        for (const [path, blob] of spare.blobs) this.blobs.set(path, blob);
    }

    // The same when the store cannot be read.
    goOnAlone(fs, spare, mark) {
        this.restore(fs, { ...spare, mark });
        this.#alone = true;
        this.trouble = kAlone;
    }

    // The book goes back to an earlier image; the store follows with the next commit.
    goBack(files) {
        for (const path of this.#paths()) this.#fs.unlink(path);
        layOutBook(this.#fs, files);
        this.#looked = 0;
    }

    written() { return ++this.#wrote; }
    get settled() { return !this.#busy && this.kept === this.#wrote && this.trouble === ''; }
    get settledAlone() { return this.#alone && !this.#busy && this.trouble === kAlone; }
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
            await this.#commit(change);
            this.#busy = false;
            this.#tell(wrote, this.#alone ? kAlone : '');
            if (!this.#alone) {
                this.#spare.keep(change, this.#mark);
                this.#onDisk(change.blobs);
            }
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

    // When there is no room the spare copy makes some.
    async #commit(change) {
        const commit = () => this.#store.commit(change, this.#mark + 1);
        if (this.#alone) {
            await this.#spare.keepAlone(change, this.#mark + 1);
        } else {
            await commit().catch(async (error) => {
                if (error?.name !== 'QuotaExceededError' || !await this.#spare.shed()) throw error;
                await commit();
            });
        }
        ++this.#mark;
    }

    // Once a start, at rest: the spare copy is made, or brought up to the store.
    copy() { this.#spare.catchUp(new Map(this.#shadow), new Map([...this.blobs.entries()].filter(([path]) => !passing(path))), this.#mark); }

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

// Into the program's memory: a map of path to bytes.
export function layOutBook(fs, files) {
    if (!fs.analyzePath(kBook).exists) fs.mkdir(kBook);
    for (const [path, bytes] of files) fs.writeFile(path, bytes);
}

function same(a, b) {
    if (a.length !== b.length) return false;
    for (let i = 0; i < a.length; ++i) if (a[i] !== b[i]) return false;
    return true;
}
