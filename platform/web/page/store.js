// What survives: one IndexedDB database with the book's files in chunks, the photos as blobs, and the image of the book
// as it was last found sound. Everything that belongs to one change is written in one strict transaction.

export const kChunk = 65536; // bytes of a file in one record

const kPatience = 10000; // ms; a browser's database has been known never to answer

const kStores = ['files', 'chunks', 'blobs', 'good'];

function answer(request) {
    return new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
    });
}

function finished(transaction) {
    return new Promise((resolve, reject) => {
        transaction.oncomplete = () => resolve();
        transaction.onabort = () => reject(transaction.error ?? new DOMException('aborted', 'AbortError'));
    });
}

export class Store {
    #db = null;

    async open() {
        if (this.#db) return this.#db;
        const request = indexedDB.open('cotter', 1);
        request.onupgradeneeded = () => {
            for (const name of kStores) request.result.createObjectStore(name);
        };
        const late = new Promise((_, reject) =>
            setTimeout(() => reject(new DOMException('no answer', 'TimeoutError')), kPatience));
        const db = await Promise.race([answer(request), late]);
        db.onclose = () => { this.#db = null; }; // the browser may close it at any time; the next call opens it again
        db.onversionchange = () => db.close();
        this.#db = db;
        return db;
    }

    // {files: Map of path to bytes, blobs: Map of path to Blob, mark: how many commits it has seen}
    async load() {
        const db = await this.open();
        const transaction = db.transaction(kStores);
        const [files, chunkKeys, chunks, blobKeys, blobs, mark] = await Promise.all([
            answer(transaction.objectStore('files').getAllKeys()).then((keys) => Promise.all(keys.map(
                async (path) => [path, await answer(transaction.objectStore('files').get(path))]))),
            answer(transaction.objectStore('chunks').getAllKeys()),
            answer(transaction.objectStore('chunks').getAll()),
            answer(transaction.objectStore('blobs').getAllKeys()),
            answer(transaction.objectStore('blobs').getAll()),
            answer(transaction.objectStore('good').get('mark')),
        ]);
        const out = { files: new Map(), blobs: new Map(blobKeys.map((path, i) => [path, blobs[i]])), mark: mark ?? 0 };
        for (const [path, size] of files) out.files.set(path, new Uint8Array(size));
        chunkKeys.forEach(([path, index], i) => {
            const file = out.files.get(path);
            if (file && index * kChunk < file.length) file.set(chunks[i].subarray(0, file.length - index * kChunk), index * kChunk);
        });
        return out;
    }

    // change: {files: [{path, size, chunks: [[index, bytes]], from}], gone: [path], blobs: [[path, Blob]], blobsGone: [path]};
    // chunks from `from` on are no more. `mark` counts the commits. All of it or nothing; resolved when it would survive a
    // power cut.
    async commit(change, mark) {
        const db = await this.open();
        const transaction = db.transaction(kStores, 'readwrite', { durability: 'strict' });
        const done = finished(transaction);
        try {
            const [files, chunks, blobs] = ['files', 'chunks', 'blobs'].map((name) => transaction.objectStore(name));
            for (const file of change.files) {
                files.put(file.size, file.path);
                for (const [index, bytes] of file.chunks) chunks.put(bytes, [file.path, index]);
                chunks.delete(IDBKeyRange.bound([file.path, file.from], [file.path, Infinity]));
            }
            for (const path of change.gone) {
                files.delete(path);
                chunks.delete(IDBKeyRange.bound([path, 0], [path, Infinity]));
            }
            for (const [path, blob] of change.blobs) blobs.put(blob, path);
            for (const path of change.blobsGone) blobs.delete(path);
            transaction.objectStore('good').put(mark, 'mark');
            transaction.commit?.();
        } catch (error) {
            done.catch(() => {});
            try { transaction.abort(); } catch { /* it is over already */ }
            throw error;
        }
        await done;
    }

    // The blob as the store has it: on the disk, not in memory.
    async blob(path) {
        const db = await this.open();
        return answer(db.transaction('blobs').objectStore('blobs').get(path));
    }

    async keepGood(files) {
        const db = await this.open();
        const transaction = db.transaction('good', 'readwrite', { durability: 'strict' });
        transaction.objectStore('good').put({ at: Date.now(), files: [...files] }, 'image');
        await finished(transaction);
    }

    // {at, files: [[path, bytes]]} or undefined.
    async good() {
        const db = await this.open();
        return answer(db.transaction('good').objectStore('good').get('image'));
    }
}
