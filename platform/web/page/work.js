// The page's side of the worker: orders go out with the blobs they need, answers come back with the blobs that were
// made. The worker is started when it is first needed and ended when it has rested, so that its memory is free again.

const kRest = 15000; // ms

export class Work {
    #worker = null; #rest = 0;
    #open = new Set();

    // `module`: the compiled program; `done(order, json)` is called for each answer, json '' when there is none.
    constructor(blobs, module, done) {
        Object.assign(this, { blobs, module, done });
    }

    order(order, json) {
        clearTimeout(this.#rest);
        this.#open.add(order);
        const worker = this.#worker ??= this.#start();
        const wanted = this.#wanted(JSON.parse(json));
        worker.postMessage({ order, json, blobs: [...this.blobs.entries()].filter(([path]) => wanted(path)) });
    }

    #wanted(order) {
        if (order.kind === 'pack') {
            const photos = new Set(order.photos ?? []);
            return (path) => photos.has(path.split('/').pop().split('.')[0]);
        }
        const paths = new Set(order.paths ?? [order.path]);
        return (path) => paths.has(path);
    }

    #start() {
        const worker = new Worker('worker.js', { type: 'module' });
        worker.onmessage = ({ data }) => {
            for (const [path, blob] of data.blobs) this.blobs.set(path, blob);
            this.#answered(data.order, data.json);
        };
        worker.onerror = () => this.#lost();
        worker.postMessage({ module: this.module });
        return worker;
    }

    #answered(order, json) {
        this.#open.delete(order);
        if (this.#open.size === 0) this.#rest = setTimeout(() => this.#end(), kRest);
        this.done(order, json);
    }

    #end() {
        this.#worker?.terminate();
        this.#worker = null;
    }

    #lost() {
        const open = [...this.#open];
        this.#end();
        for (const order of open) this.#answered(order, '');
    }
}
