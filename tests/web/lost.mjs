// The browser throws its database away, as browsers do that find it damaged, and says nothing of it: the book comes back
// from the spare copy, with its photos, and a word about it; then both copies are whole again. The last part shows when a
// browser does so: killed between the two writes that make a record of its log, it appends to the torn record at the next
// start, and at the start after that holds the database to be corrupt.
// Nor does a browser that cannot open its database: the book opens from the spare copy, which goes on alone.
//
// usage: lost.mjs
import { execFileSync } from 'node:child_process';
import { appendFileSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { check, handOver, identify, open, photo, scratch, serve, takeBook } from './cotter_page.mjs';

const folder = scratch();
const profile = join(folder, 'profile');
const server = await serve();

// A photo and three levels; the spare copy follows by itself.
let browser = await open(profile);
await browser.hands.start(server.url);
await identify(browser.hands);
await browser.hands.taps('Axle 1, left', 'Hub oil');
await browser.hands.tap('Photo');
await browser.hands.choose('Take a photo', photo('02_axle1-left_wheel-on.jpg'));
await browser.hands.expect('Point', 60000);
await browser.hands.back();
await browser.hands.taps('Before: below', 'Before: at the line', 'Before: below');
await browser.page.waitForFunction(() => window.cotter.disk.settled && window.cotter.spare.settled);
const pictures = (paths) => paths.filter((path) => path.endsWith('.jpg')).sort(); // the rest moves on with each start
const steps = (book) => execFileSync('/usr/bin/python3', ['-c',
    'import sqlite3, sys; print(sqlite3.connect(sys.argv[1] + "/book.sqlite").execute("SELECT count(*) FROM journal").fetchone()[0])',
    join(folder, book)], { encoding: 'utf8' });
const kept = pictures(await takeBook(browser.page, join(folder, 'before')));
check('a photo is kept', kept.length >= 1, kept);
const kill = async () => {
    execFileSync('pkill', ['-9', '-f', profile]);
    await browser.context.close().catch(() => {});
};
await kill();

for (const time of ['first', 'second']) {
    rmSync(join(profile, 'Default', 'IndexedDB'), { recursive: true });
    browser = await open(profile);
    await browser.hands.start(server.url);
    await browser.hands.expect('It is back from its second copy');
    await browser.hands.expect('Hub oil');
    await browser.hands.rest();
    await browser.page.waitForFunction(() => window.cotter.spare.settled);
    const again = pictures(await takeBook(browser.page, join(folder, time)));
    check('the same photos are in the store again', again.join() === kept.join(), kept, again);
    check('and every step', steps(time) === steps('before'), steps('before'), steps(time));
    for (const path of kept)
        execFileSync('cmp', [path.replace('/book', join(folder, 'before')), path.replace('/book', join(folder, time))]);
    console.log(`${time} time: ${await browser.page.textContent('#notice p')}`);
    await browser.context.close();
}

// What changes while the book is still being copied for the first time follows the copy.
const slow = await open(join(folder, 'slow'));
await slow.context.addInitScript(() => {
    const put = Cache.prototype.put;
    Cache.prototype.put = async function (...values) {
        await new Promise((later) => setTimeout(later, 300));
        return put.apply(this, values);
    };
});
await slow.hands.start(server.url);
await identify(slow.hands);
await slow.hands.taps('Axle 1, left', 'Hub oil', 'Before: below');
await slow.page.waitForFunction(() => window.cotter.disk.settled && window.cotter.spare.settled, null, { timeout: 120000 });
check('the copies count alike', await slow.page.evaluate(async () => {
    const Spare = window.cotter.spare.constructor;
    const Store = window.cotter.store.constructor;
    return (await Spare.find()).mark === (await new Store().load()).mark;
}));
await slow.context.close();

// Without a loss nothing is said.
browser = await open(profile);
await browser.hands.start(server.url);
check('no notice', await browser.page.isHidden('#notice'));
await browser.hands.tap('Before: at the line');
await browser.page.waitForFunction(() => window.cotter.disk.settled && window.cotter.spare.settled);
await kill();

const database = join(profile, 'Default', 'IndexedDB', readdirSync(join(profile, 'Default', 'IndexedDB')).find((name) => name.endsWith('.leveldb')));
const log = readdirSync(database).filter((name) => name.endsWith('.log')).sort().at(-1);
appendFileSync(join(database, log), Buffer.from([1, 2, 3, 4, 0, 16, 1])); // sum, length and kind of a record, without it
browser = await open(profile);
await browser.hands.start(server.url);
await browser.hands.tap('Before: below');
await browser.page.waitForFunction(() => window.cotter.disk.settled && window.cotter.spare.settled);
await takeBook(browser.page, join(folder, 'torn'));
await kill();
browser = await open(profile);
await browser.hands.start(server.url);
const torn = pictures(await takeBook(browser.page, join(folder, 'after')));
check('after a torn record all photos are there', torn.join() === kept.join(), kept, torn);
check('and every step', steps('after') === steps('torn'), steps('torn'), steps('after'));
console.log(`torn record: ${await browser.page.isVisible('#notice') ? 'the browser threw its database away' : 'the browser mended it'}; all is there`);
await browser.context.close();

// A file stands where the browser keeps its databases.
const databases = join(profile, 'Default', 'IndexedDB');
function shut() {
    renameSync(databases, `${databases}-away`);
    writeFileSync(databases, '');
}
function unshut() {
    rmSync(databases, { recursive: true, force: true });
    renameSync(`${databases}-away`, databases);
}
async function shutOut(work) {
    shut();
    browser = await open(profile);
    await browser.hands.start(server.url);
    await browser.hands.expect('This browser does not open its database');
    await browser.page.getByText('Understood').click();
    await browser.hands.expect('not saved: this browser does not open its database');
    await work(browser);
    await browser.hands.rest();
    await kill();
    unshut();
    browser = await open(profile);
    await browser.hands.start(server.url);
}
const settled = (page) => page.waitForFunction(() => window.cotter.disk.settled && window.cotter.spare.settled);

await shutOut(async ({ hands }) => {
    await hands.tap('Before: at the line');
    await hands.tap('Photo');
    await hands.choose('Take a photo', photo('06_axle2-left_rotor-lip.jpg'));
    await hands.expect('Point', 60000);
    await hands.back();
});
await browser.hands.expect('It is back from its second copy');
await settled(browser.page);
const more = pictures(await takeBook(browser.page, join(folder, 'alone')));
check('what was done in the second copy alone is in the book', more.length > kept.length && kept.every((path) => more.includes(path)), kept, more);
check('and every step', Number(steps('alone')) > Number(steps('after')), steps('after'), steps('alone'));
await browser.page.getByText('Understood').click();

// The first copy went on by itself before the database was shut: what it calls saved counts.
await browser.page.evaluate(() => { Cache.prototype.put = () => new Promise(() => {}); });
await browser.hands.tap('Before: below');
await browser.page.waitForFunction(() => window.cotter.disk.settled);
await takeBook(browser.page, join(folder, 'saved'));
await kill();
await shutOut(async (alone) => {
    await alone.hands.taps('Before: at the line', 'Before: below', 'Before: at the line');
    while (!await alone.hands.shows('Hand over')) await alone.hands.back();
    await handOver(alone, folder); // as the header asks for
});
await browser.hands.expect('is not in the book');
await takeBook(browser.page, join(folder, 'parted'));
check('what was saved is there', steps('parted') === steps('saved'), steps('saved'), steps('parted'));
await browser.page.getByText('Understood').click();
await browser.hands.tap('Before: at the line');
await settled(browser.page);
check('both copies are one again', await browser.page.evaluate(async () => {
    const image = await window.cotter.spare.constructor.find();
    return image.left === undefined && image.mark === (await new window.cotter.store.constructor().load()).mark;
}));
await browser.context.close();

// With no second copy there is nothing to open; nothing is lost by trying.
browser = await open(profile);
await browser.page.goto(`${server.url}manifest.webmanifest`);
await browser.page.evaluate(() => caches.delete('book-spare'));
await browser.context.close();
shut();
browser = await open(profile);
await browser.page.goto(server.url);
await browser.page.getByText('This browser does not open its database (').waitFor({ timeout: 60000 });
await kill();
unshut();
browser = await open(profile);
await browser.hands.start(server.url);
await takeBook(browser.page, join(folder, 'unshut'));
check('every step is there again', Number(steps('unshut')) > Number(steps('parted')), steps('parted'), steps('unshut'));
console.log('a database that does not open: the second copy goes on alone, and joins the first one again');
console.log(`lost twice, ${steps('second').trim()} steps and ${kept.length} pictures back each time`);
await browser.context.close();
process.exit(0);
