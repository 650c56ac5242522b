// The web app from its first start to the packet, by a finger on a phone's screen, with the server and then without it:
// start, trailer, photo by the file chooser, tag, reading by keypad, torque, level, sign-off, packet. The packet must be
// found valid by the program itself, and be the very bytes that the program makes of the same book.
//
// usage: journey.mjs COTTER
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { check, handOver, identify, open, photo, scratch, serve, takeBook } from './cotter_page.mjs';

const [cotter] = process.argv.slice(2);
const kNuts = [1, 5, 3, 7, 2, 6, 4, 8];
const kPasses = ['', '60 lb-ft', '120 lb-ft', 'check 120 lb-ft'];  // the first begins with its first nut

async function survey(hands) {
    await hands.taps('Axle 1, left', 'Wheel on');
    await hands.choose('Take a photo', photo('02_axle1-left_wheel-on.jpg'));
    await hands.expect('Point', 60000);
    await hands.tap('Photo', { at: [0.5, 0.48] });
    await hands.tap('Hub: oil thrown over the wheel');
    await hands.expect('Saved as');
    await hands.taps('Done', 'To the place');
}

async function measure(hands) {
    await hands.tap('Pad thickness');
    await hands.taps('7', '.', '1', 'Done');
}

async function torque(hands) {
    await hands.taps('Wheel nuts', "Enter the maker's figure", '1', '2', '0', 'Done', 'Document and page');
    await hands.type('service sheet, page 14');
    await hands.tap('Save');
    if (await hands.shows('Choose the wrench')) {  // the only one there is, is chosen
        await hands.taps('Choose the wrench', 'Another one: what is engraved on it');
        await hands.type('T-3');
        await hands.tap('Use it');
    }
    for (const start of kPasses) {
        if (start) await hands.tap(`Start ${start}`);
        for (const nut of kNuts) await hands.tap(`Nut ${nut}`);
    }
    await hands.expect('Proved');
    await hands.back();
}

async function level(hands) {
    await hands.taps('Hub oil', 'Before: below', 'Product', 'Product');
    await hands.type('gear oil SAE 90 GL-5');
    await hands.taps('Done', 'Amount', '9', '0', 'Done', 'After: at the line');
    await hands.back();
}

function sha256(path) { return createHash('sha256').update(readFileSync(path)).digest('hex'); }

// The same book, packed by the program.
async function packedHere(page, folder) {
    const book = join(folder, 'book'), out = join(folder, 'native');
    mkdirSync(book, { recursive: true });
    await takeBook(page, book);
    execFileSync(cotter, ['pack', '--book', book, '--out', out, 'NUR-07'], { stdio: 'pipe' });
    return join(out, readdirSync(out).find((name) => name.endsWith('.zip')));
}

async function journey(browser, folder, name) {
    const { hands, page } = browser;
    const work = join(folder, name);
    mkdirSync(work);
    await identify(hands, await hands.shows('Begin the first job') ? 'Begin the first job' : 'New job');
    await survey(hands);
    await measure(hands);
    await torque(hands);
    await level(hands);
    await hands.back();
    const packet = await handOver(browser, work);
    console.log(execFileSync(cotter, ['check', packet], { encoding: 'utf8' }).split('\n')[0]);
    return packet;
}

const folder = scratch();
const profile = join(folder, 'profile');
const server = await serve();

let browser = await open(profile);
await browser.hands.start(server.url);
const packet = await journey(browser, folder, 'online');
const native = await packedHere(browser.page, join(folder, 'online'));
check('the packet is the very bytes that the program makes', sha256(packet) === sha256(native), packet, native);
console.log(`online: ${readFileSync(packet).length} bytes, the same as the program's own`);
await browser.page.waitForFunction(() => navigator.serviceWorker.ready.then(() => true));
check('nothing was written to the console', browser.said.length === 0, browser.said);
await browser.context.close();

await server.stop();
browser = await open(profile);
await browser.hands.start(server.url);
await browser.hands.expect('NUR-07');
for (let i = 0; i < 4 && !(await browser.hands.shows('New job')); ++i) await browser.hands.back();
const offline = await journey(browser, folder, 'offline');
console.log(`without the server, browser cold: ${readFileSync(offline).length} bytes`);
check('nothing was written to the console', browser.said.length === 0, browser.said);
await browser.context.close();
