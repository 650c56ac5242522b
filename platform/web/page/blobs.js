// Files outside the program's memory, by path: blobs, and bytes that something else holds and nobody changes. Reading is
// synchronous, as the program asks for it: in a worker by FileReaderSync, in the page, where there is none, by a request to
// the blob's own address.

const kPart = 4 << 20; // bytes collected in memory before they become a blob of their own

export class Blobs {
    #all = new Map();
    #bytes = new Map(); // Uint8Array each
    #writers = new Map();
    #last = 0;

    constructor(changed) {
        this.changed = changed ?? (() => {});
    }

    get(path) { return this.#all.get(path); }
    set(path, blob) { this.#all.set(path, blob); this.changed(path); }
    replace(path, blob) { if (this.#all.has(path)) this.#all.set(path, blob); } // the same bytes, kept elsewhere
    lay(path, bytes) { this.#bytes.set(path, bytes); } // until a blob of that name is written
    entries() { return this.#all.entries(); }
    clear() { this.#all.clear(); }

    size(path) { return this.#all.get(path)?.size ?? this.#bytes.get(path)?.length ?? -1; }

    read(path, offset, count) {
        const blob = this.#all.get(path)?.slice(offset, offset + count);
        if (!blob) return this.#bytes.get(path)?.subarray(offset, offset + count) ?? null;
        try {
            if (typeof FileReaderSync !== 'undefined') return new Uint8Array(new FileReaderSync().readAsArrayBuffer(blob));
            return readInPage(blob);
        } catch {
            return null;
        }
    }

    list(folder) {
        const start = folder.endsWith('/') ? folder : folder + '/';
        const names = new Set();
        for (const path of [...this.#all.keys(), ...this.#bytes.keys()])
            if (path.startsWith(start)) names.add(path.slice(start.length).split('/', 1)[0]);
        return [...names].sort();
    }

    create(path) {
        this.#writers.set(++this.#last, { path, done: [], parts: [], bytes: 0 });
        return this.#last;
    }

    write(writer, bytes) {
        const to = this.#writers.get(writer);
        try {
            to.parts.push(bytes);
            to.bytes += bytes.length;
            if (to.bytes > kPart) this.#settle(to);
            return 1;
        } catch {
            return 0;
        }
    }

    #settle(to) {
        to.done.push(new Blob(to.parts));
        to.parts = [];
        to.bytes = 0;
    }

    close(writer) {
        const to = this.#writers.get(writer);
        this.#writers.delete(writer);
        this.#settle(to);
        this.set(to.path, to.done.length === 1 ? to.done[0] : new Blob(to.done));
    }

    rename(from, to) {
        const blob = this.#all.get(from);
        if (!blob) return 0;
        this.remove(from);
        this.set(to, blob);
        return 1;
    }

    remove(path) {
        const there = this.#all.delete(path);
        if (there) this.changed(path);
        return there ? 1 : 0;
    }
}

function readInPage(blob) {
    const address = URL.createObjectURL(blob);
    try {
        const request = new XMLHttpRequest();
        request.open('GET', address, false);
        request.overrideMimeType('text/plain; charset=x-user-defined');
        request.send();
        return Uint8Array.from(request.responseText, (c) => c.charCodeAt(0) & 0xff);
    } finally {
        URL.revokeObjectURL(address);
    }
}
