// The browser throws its database away, as browsers do that find it damaged, and says nothing of it: the book comes back
// from the spare copy, with its photos, and a word about it; then both copies are whole again.
//
// usage: lost.mjs
import { execFileSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { check, identify, open, photo, scratch, serve, takeBook } from './cotter_page.mjs';

const folder = scratch();
const profile = join(folder, 'profile');
const server = await serve();

// A photo and three levels; the spare copy follows by itself.
let browser = await open(profile);
await browser.hands.start(server.url);
await identify(browser.hands);
await browser.hands.taps('Axle 1, left', 'Hub oil');
await browser.hands.tap('Photo');
await browser.hands.choose('Take a photo', photo('02_A1-R_wheel-on.jpg'));
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
execFileSync('pkill', ['-9', '-f', profile]);
await browser.context.close().catch(() => {});

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

// Without a loss nothing is said.
browser = await open(profile);
await browser.hands.start(server.url);
check('no notice', await browser.page.isHidden('#notice'));
console.log(`lost twice, ${steps('second').trim()} steps and ${kept.length} pictures back each time`);
process.exit(0);
