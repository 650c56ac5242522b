// Kills the browser again and again while levels are tapped and photos taken in, and looks for what the screen had shown
// as saved: each change told must be in the journal, each photo told must be in the job, and every photo of the job must
// have its bytes. The page must open again on what there is.
//
// usage: durability.mjs ROUNDS [SEED]
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { check, identify, open, scratch, serve, takeBook } from './cotter_page.mjs';

const rounds = Number(process.argv[2]);
let seed = Number(process.argv[3] ?? 7);
const random = () => (seed = (seed * 1103515245 + 12345) % 2147483648) / 2147483648;

const kCount = `
import json, sqlite3, sys
db = sqlite3.connect(sys.argv[1] + "/book.sqlite")
assert db.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
steps = db.execute("SELECT count(*) FROM journal").fetchone()[0]
shots = [json.loads(body)["photo"] for (body,) in db.execute("SELECT body FROM shot")]
print(json.dumps({"steps": steps, "shots": [[p["sha256"], p["bytes"]] for p in shots]}))
`;

// In the page: taps 'Before: …' in turn, each fifth time takes in a photo first, and tells what was shown as saved.
async function tapOn([from, there]) {
    const { screen, disk, picker } = window.cotter;
    const pause = (ms) => new Promise((later) => setTimeout(later, ms));
    const element = (label) => document.querySelector(`#mirror > [data-label="${label}"]`);
    const saved = async () => {
        while (!(screen.resting && disk.settled && [...document.querySelectorAll('#mirror > p')].some((e) => /^saved/.test(e.textContent)))) await pause(4);
    };
    const unplaced = () => Math.max(0, ...[...document.querySelectorAll('#mirror > [data-label]')]
        .map((e) => Number(/^(\d+) without a place/.exec(e.dataset.label)?.[1] ?? 0)));
    let steps = 0, photos = 0, known = there;
    for (let i = from; ; ++i) {
        if (i % 5 === 3) {
            const canvas = new OffscreenCanvas(640, 480);
            const context = canvas.getContext('2d');
            for (let n = 0; n < 200; ++n) {
                context.fillStyle = `hsl(${Math.random() * 360} 80% 50%)`;
                context.fillRect(Math.random() * 640, Math.random() * 480, 60, 60);
            }
            const blob = await canvas.convertToBlob({ type: 'image/jpeg' });
            await picker.take([new File([blob], `IMG_${i}.jpg`, { type: 'image/jpeg' })]);
            while (unplaced() <= known) await pause(4);
            known = unplaced();
            await saved();
            console.log(`told photo ${++photos}`);
            window.history.back();
            while (!element('Before: below')) await pause(4);
        }
        const box = element(i % 2 ? 'Before: below' : 'Before: at the line').getBoundingClientRect();
        screen.press(box.x + box.width / 2, box.y + box.height / 2);
        await pause(1);
        await saved();
        console.log(`told step ${++steps}`);
    }
}

function told(lines, what) {
    return Math.max(0, ...lines.filter((l) => l.startsWith(`told ${what} `)).map((l) => Number(l.split(' ')[2])));
}

// What the store holds, by other programs: the journal's steps, the job's photos, each with its bytes.
async function there(page, folder) {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder);
    await takeBook(page, folder);
    const book = JSON.parse(execFileSync('/usr/bin/python3', ['-c', kCount, folder], { encoding: 'utf8' }));
    for (const [sha256, bytes] of book.shots) {
        const file = readFileSync(join(folder, 'photos', sha256.slice(0, 2), `${sha256}.jpg`));
        check('a photo of the job has its bytes', file.length === bytes && createHash('sha256').update(file).digest('hex') === sha256, sha256);
    }
    return { steps: book.steps, photos: book.shots.length };
}

const folder = scratch();
const profile = join(folder, 'profile');
const small = { size: { width: 412, height: 700 }, scale: 1 };
const server = await serve();
let browser = await open(profile, small);
await browser.hands.start(server.url);
await identify(browser.hands);
await browser.hands.taps('Axle 1, left', 'Hub oil', 'Before: below');
let before = await there(browser.page, join(folder, 'book'));
let confirmed = 0, killed = 0, photos = 0;

for (let round = 1; round <= rounds; ++round) {
    const lines = [];
    browser.page.on('console', (message) => lines.push(message.text()));
    browser.page.evaluate(tapOn, [round, before.photos]).catch(() => {});
    await new Promise((later) => setTimeout(later, 150 + random() * 5000));
    execFileSync('pkill', ['-9', '-f', profile]);
    ++killed;
    await browser.context.close().catch(() => {});
    browser = await open(profile, small);
    await browser.hands.start(server.url);
    const now = await there(browser.page, join(folder, 'book'));
    const steps = told(lines, 'step') + told(lines, 'photo');
    check(`round ${round}: what was shown as saved is there`, now.steps >= before.steps + steps, before, lines.slice(-3), now);
    check(`round ${round}: its photos are there`, now.photos >= before.photos + told(lines, 'photo'), before, lines.slice(-3), now);
    confirmed += steps;
    photos += told(lines, 'photo');
    before = now;
    if (round % 10 === 0) console.log(`${round} rounds, ${confirmed} changes, ${photos} photos`);
    while (!(await browser.hands.shows('Before: below'))) await browser.hands.back();
}
console.log(`${killed} times killed, ${confirmed} changes shown as saved, ${photos} of them photos: none missing`);
check('something was confirmed', confirmed > rounds / 2, confirmed);
execFileSync('pkill', ['-9', '-f', profile]);
process.exit(0);
