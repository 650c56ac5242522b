// Begins with what takes longest, before the other scripts are there; main.js goes on with it. A worker fetches and
// compiles the program while the page's thread prepares to draw, which blocks it for as long.
'use strict';
globalThis.cotterEarly = (() => {
    const canvas = document.createElement('canvas');
    canvas.id = 'canvas';
    canvas.ariaHidden = 'true';
    const prepare = () => {
        canvas.width = Math.floor(innerWidth * devicePixelRatio);
        canvas.height = Math.floor(innerHeight * devicePixelRatio);
        canvas.getContext('webgl', { alpha: false, antialias: false, depth: false, stencil: false }); // as SDL asks for it
    };
    const compiled = new Promise((resolve, reject) => {
        const worker = new Worker('compile.js');
        worker.onmessage = ({ data }) => {
            if (data.begun) prepare(); // not sooner: a worker does not start while the page is blocked
            else if (data.module) resolve(data.module);
            else reject(new Error(data.trouble));
        };
        worker.onerror = () => reject(new Error('the program was not found'));
    });
    const data = fetch('cotter.data').then((answer) => answer.arrayBuffer());
    for (const promise of [compiled, data]) promise.catch(() => {}); // said by main.js
    return { compiled, data, canvas };
})();
