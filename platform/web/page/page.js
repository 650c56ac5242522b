// The page: the book out of the store, the program into the page, and what each tells the other.
import { Blobs } from './blobs.js';
import createCotter from './cotter.js';
import { Disk } from './disk.js';
import { Field } from './field.js';
import { keepLetters, layOutLetters } from './letters.js';
import { kLock } from './lock.js';
import { Mirror } from './mirror.js';
import { kRows, pixels } from './pictures.js';
import { Picker } from './picker.js';
import { Screen } from './screen.js';
import { Spare } from './spare.js';
import { storageFacts } from './storage.js';
import { Store } from './store.js';
import { Work } from './work.js';

const kOffer = 200, kReadAhead = 500, kKeepLetters = 1000, kKeepCopies = 1500; // ms after the first frame was asked for

const kNoRoom = 'This device has no room left: free some space, then try again.';
const anew = () => location.reload();

function say(title, text, button, pressed = anew) {
    clearTimeout(cotterEarly.slow);
    const notice = document.getElementById('notice');
    notice.querySelector('h1').textContent = title;
    notice.querySelector('p').textContent = text;
    notice.querySelector('button')?.remove();
    if (button) {
        const element = document.createElement('button');
        element.textContent = button;
        element.addEventListener('click', pressed);
        notice.append(element);
    }
    notice.hidden = false;
}

function calls(Module) {
    const number = (name, count) => Module.cwrap(name, 'number', Array(count).fill('number'));
    return {
        open: Module.cwrap('cotter_open', 'string', Array(8).fill('number')),
        earlierMayOpen: number('cotter_earlier_may_open', 0),
        resize: number('cotter_resize', 8),
        frame: number('cotter_frame', 1),
        finger: number('cotter_finger', 5),
        mouse: number('cotter_mouse', 5),
        mouseLeft: number('cotter_mouse_left', 0),
        wheel: number('cotter_wheel', 2),
        key: Module.cwrap('cotter_key', 'number', ['string', 'number']),
        fieldText: Module.cwrap('cotter_field_text', null, ['string']),
        keepLetters: number('cotter_keep_letters', 0),
        reach: number('cotter_reach', 1),
        readAhead: number('cotter_read_ahead', 0),
        happened: number('cotter_happened', 0),
        chosen: Module.cwrap('cotter_chosen', null, ['string']),
        workDone: Module.cwrap('cotter_work_done', null, ['number', 'string']),
        atBottom: number('cotter_at_bottom', 0),
        mirror: Module.cwrap('cotter_mirror', 'string', []),
    };
}

// What the program asks of the page; see bridge.h.
function makeHost(parts) {
    const facts = { used: 0, room: 0, mayBeCleared: true };
    let awake = null;
    return {
        facts,
        blobs: parts.blobs,
        pick: (what) => parts.picker.pick(what),
        handOut: (path) => parts.picker.handOut(path, parts.blobs.get(path) ?? parts.Module.FS.readFile(path)),
        confirm: () => navigator.vibrate?.(15),
        keepAwake: async (on) => {
            const lock = await awake;
            lock?.release?.();
            awake = on ? navigator.wakeLock?.request('screen').catch(() => null) : null;
        },
        storage: () => facts,
        written: () => parts.disk.written(),
        kept: () => parts.disk.kept,
        trouble: () => parts.disk.trouble,
        fieldShow: (edit) => parts.field.show(edit),
        fieldHide: () => parts.field.hide(),
        wake: () => parts.screen.soon(),
        picture: (id, longest) => givePicture(parts, id, longest),
        work: (order, json) => parts.work.order(order, json),
    };
}

async function givePicture({ Module, blobs, screen }, id, longest) {
    const picture = await pixels(blobs, id, longest);
    const later = () => new Promise((resolve) => setTimeout(resolve));
    const give = (...values) => Module.ccall('cotter_picture', null, ['string', 'number', 'number', 'number', 'number'], values);
    if (picture) {
        const { width, height } = picture;
        const at = Module._malloc(4 * width * height);
        try {
            for (let from = 0; from < height; from += kRows) {
                Module.HEAPU8.set(picture.rows(from), at + 4 * width * from);
                await later();
            }
            give(id, longest, width, height, at);
        } catch {
            give(id, longest, 0, 0, 0); // no room for it
        } finally {
            picture.close();
            Module._free(at);
        }
    } else {
        give(id, longest, 0, 0, 0);
    }
    screen.soon();
}

// The system's back gesture leads back through the pages; at the first one it leaves.
function listenToBack({ program, screen }) {
    history.replaceState('bottom', '');
    history.pushState('top', '');
    window.addEventListener('popstate', ({ state }) => {
        if (state !== 'bottom') return;
        if (program.atBottom()) return history.back();
        program.key('BrowserBack', 1);
        program.key('BrowserBack', 0);
        history.pushState('top', '');
        screen.soon();
    });
}

// For the browser that installs or lists the app; not in the page, as it would fetch them before the program.
function offerToInstall() {
    navigator.serviceWorker?.register('sw.js').catch(() => {});
    for (const [rel, href] of [['manifest', 'manifest.webmanifest'], ['apple-touch-icon', 'icon-192.png']])
        document.head.append(Object.assign(document.createElement('link'), { rel, href }));
}

// Once this start has found the book sound, its image is kept apart, and the spare copy is brought up to it.
async function keepCopies({ disk, store }) {
    while (!disk.settled) await new Promise((later) => setTimeout(later, 500));
    disk.copy();
    await store.keepGood(disk.files());
}

const time = (at) => new Date(at).toLocaleString();
const secondCopy = ({ spare }) => spare.load().catch(() => null); // null: there is none, or it is not whole

// The book into the program's memory, as the store has it; as the spare copy has it when the store has lost it or cannot be
// read. What there is to say of it, or ''.
async function layOut(parts, kept) {
    const { disk, spare, Module } = parts;
    const copy = kept.unread || spare.isAhead(kept.mark) ? await secondCopy(parts) : null;
    if (kept.unread) {
        if (!copy) throw new Error(kept.unread === 'QuotaExceededError' ? kNoRoom : `This browser does not open its database (${kept.unread}), where the book is. Nothing was deleted. Close all of the browser, see that the device has room, then try again.`);
        disk.goOnAlone(Module.FS, copy, spare.mark);
        return `This browser does not open its database. The book is here from its second copy, as it was on ${time(copy.at)}; what you change is kept there alone. Send what is done off this device, then close all of the browser and open this page again.`;
    }
    if (copy) {
        disk.restoreSpare(Module.FS, { ...kept, mark: spare.mark }, copy);
        return `This browser had lost the book, or its last changes. It is back from its second copy, as it was on ${time(copy.at)}. Look it through, and send what is done off this device.`;
    }
    disk.restore(Module.FS, kept);
    return spare.hasParted(kept.mark) ? `The browser's database opens again, and is newer than the second copy was. What was changed in that copy up to ${time(spare.at)} is not in the book.` : '';
}

// {trouble: '' or why not, said}. A book that does not open is put back from the second copy, or else to the last image that
// was found sound.
async function openBook(parts) {
    const { program, screen, disk, store } = parts;
    const open = () => program.open(...screen.size(), performance.now());
    const trouble = open();
    if (trouble === '' || !program.earlierMayOpen()) return { trouble };
    for (const earlier of [() => secondCopy(parts), () => store.good()]) {
        const copy = await earlier().catch(() => null);
        if (!copy) continue;
        disk.goBack(copy.files);
        if (open() === '') return { trouble: '', said: `The book was damaged (${trouble}). It is as it was on ${time(copy.at)}.` };
    }
    return { trouble: `It is damaged (${trouble}), and this browser has no sound copy of it. Nothing was deleted.` };
}

function wire(parts) {
    const { Module, program, disk, blobs } = parts;
    const mirror = () => {
        const text = program.mirror();
        if (text !== '') parts.mirror.show(JSON.parse(text));
    };
    parts.mirror = new Mirror(document.getElementById('mirror'), document.getElementById('said'),
        (x, y) => parts.screen.press(x, y),
        (target) => { program.reach(target); parts.screen.now(); mirror(); });
    parts.screen = new Screen(program, cotterEarly.canvas, (resting) => {
        disk.keep();
        if (resting) mirror();
    });
    parts.screen.lost = () => location.reload();
    const key = (name) => { program.key(name, 1); program.key(name, 0); };
    parts.field = new Field(
        (text) => { program.fieldText(text); parts.screen.soon(); },
        () => { parts.screen.now(); key('Enter'); parts.screen.soon(); });
    parts.picker = new Picker(blobs,
        (paths) => { program.chosen(JSON.stringify(paths)); parts.screen.soon(); },
        (text) => { document.getElementById('said').textContent = text; });
    parts.work = new Work(blobs, parts.compiled, (order, json) => {
        program.workDone(order, json);
        parts.screen.soon();
    });
    const canvas = cotterEarly.canvas;
    canvas.addEventListener('dragover', (event) => event.preventDefault());
    canvas.addEventListener('drop', (event) => {
        event.preventDefault();
        parts.picker.take([...event.dataTransfer.files]);
    });
    window.addEventListener('beforeunload', (event) => { if (!disk.settled) event.preventDefault(); });
    return Module;
}

// The program; its script gets ready while it is still being compiled.
function load(files, host) {
    return new Promise((resolve, reject) => {
        const instantiateWasm = (imports, ready) => {
            const made = async (module) => ready(await WebAssembly.instantiate(module, imports), module);
            cotterEarly.program.then(made).catch(reject);
            return {};
        };
        createCotter({ getPreloadedPackage: () => files, canvas: cotterEarly.canvas, host, instantiateWasm }).then(resolve, reject);
    });
}

async function start() {
    const { canvas, slow } = cotterEarly;
    const notice = document.getElementById('notice');
    notice.before(canvas);
    if (!await cotterEarly.ours)
        return say('Cotter is open already', 'It is open in another window or tab. Two at once would write over each other. Close the other one, then try again.', 'Try again');
    navigator.locks?.request(kLock, () => new Promise(() => {})); // after the worker, as long as the page lives
    const blobs = new Blobs();
    const store = new Store();
    const spare = new Spare();
    const parts = { store, spare, blobs };
    parts.disk = new Disk(store, spare, blobs, () => { parts.program?.happened(); parts.screen?.soon(); });
    const host = makeHost(parts);
    parts.Module = await load(await cotterEarly.files, host);
    parts.compiled = await cotterEarly.program;
    parts.program = calls(parts.Module);
    layOutLetters(blobs, await cotterEarly.letters);
    spare.goOn(await cotterEarly.spare);
    const back = await layOut(parts, await cotterEarly.book);
    Object.assign(host.facts, await cotterEarly.storage);
    wire(parts);
    const { trouble, said = back } = await openBook(parts);
    if (trouble) return say('The book does not open', trouble, 'Try again');
    parts.screen.listen();
    parts.screen.first = () => {
        performance.mark('cotter-usable'); // drawn, and listening
        listenToBack(parts);
    };
    parts.screen.soon();
    clearTimeout(slow);
    notice.hidden = true;
    if (said) say('Before you go on', said, 'Understood', () => { notice.hidden = true; });
    setTimeout(offerToInstall, kOffer);
    setTimeout(parts.program.readAhead, kReadAhead);
    setTimeout(() => {
        if (parts.program.keepLetters()) keepLetters(blobs).catch(() => {}); // the next start bakes its own
    }, kKeepLetters);
    setTimeout(() => keepCopies(parts).catch(() => {}), kKeepCopies);
    const ask = () => navigator.storage?.persist?.().then(storageFacts).then((facts) => Object.assign(host.facts, facts)).catch(() => {});
    window.addEventListener('pointerup', ask, { once: true });
    window.cotter = parts; // for the console and the tests
}

export function begin() {
    start().catch((error) => {
        const shown = error?.name === 'QuotaExceededError' ? kNoRoom : String(error?.message ?? error);
        say('Cotter does not start', shown, 'Try again');
    });
}
