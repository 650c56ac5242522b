// Begins with what takes longest, before the other scripts are there; page.js goes on with it. A worker fetches and
// compiles the program and reads the store while this thread prepares to draw.

import style from './page.css';

const kPatience = 1500; // ms without a word

const sheet = new CSSStyleSheet();
sheet.replaceSync(style);
document.adoptedStyleSheets = [sheet];

const canvas = document.createElement('canvas');
canvas.id = 'canvas';
canvas.ariaHidden = 'true';

function prepareToDraw() {
    canvas.width = Math.floor(innerWidth * devicePixelRatio);
    canvas.height = Math.floor(innerHeight * devicePixelRatio);
    canvas.getContext('webgl', { alpha: false, antialias: false, depth: false, stencil: false }); // as SDL asks for it
}

// What the worker brings; see there.
const answers = {};
const brought = Object.fromEntries(['ours', 'files', 'letters', 'book', 'spare', 'storage', 'program'].map((name) =>
    [name, new Promise((resolve, reject) => { answers[name] = { resolve, reject }; })]));
for (const promise of Object.values(brought)) promise.catch(() => {}); // said by page.js
const worker = new Worker('ahead.js', { type: 'module' });
worker.postMessage({ size: [screen.width, screen.height, devicePixelRatio] });
const fail = (trouble) => Object.values(answers).forEach(({ reject }) => reject(Object.assign(new Error(), trouble)));
worker.onmessage = ({ data: { name, value } }) => {
    if (name === 'begun') prepareToDraw(); // not sooner: a worker does not start while the page is blocked
    else if (name === 'trouble') fail(value);
    else answers[name].resolve(value);
};
worker.onerror = () => fail({ message: 'the program was not found' });
const slow = setTimeout(() => { document.getElementById('notice').hidden = false; }, kPatience);
globalThis.cotterEarly = { canvas, slow, ...brought };
