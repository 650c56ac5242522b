// The web app's figures: what is transferred, first start and start from the cache with the CPU slowed down four times,
// a 12 megapixel photo from the chooser until it can be tagged, the longest block of the page meanwhile, memory with 60
// photos in the job. Prints one line each with its aim. Not part of the test run.
//
// usage: web_bench.mjs                     (environment as tests/web/cotter_page.mjs says; an idle machine)
import { execFileSync } from 'node:child_process';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { identify, open, scratch, serve } from '../web/cotter_page.mjs';

const folder = scratch();
const line = (what, value, aim) => console.log(`${what.padEnd(58)} ${String(value).padStart(10)}   aim ${aim}`);

// A JPEG of 4000 x 3000 with detail everywhere, another one for each number.
function bigPhoto(number) {
    const path = join(folder, `IMG_${number}.jpg`);
    execFileSync('/usr/bin/python3', ['-c', `
import sys
from PIL import Image, ImageDraw
import random
random.seed(${number})
im = Image.effect_noise((500, 375), 60).convert("RGB").resize((4000, 3000), Image.BICUBIC)
d = ImageDraw.Draw(im)
for _ in range(300):
    x, y = random.randrange(4000), random.randrange(3000)
    d.ellipse([x, y, x + random.randrange(20, 400), y + random.randrange(20, 400)], fill=tuple(random.randrange(256) for _ in range(3)))
im.save(sys.argv[1], quality=90)`, path]);
    return path;
}

// Milliseconds from the navigation to the first usable frame. It is the page's start that is measured: the browser's own
// is over before, and nothing is asked of the page meanwhile, as what asks would have to be compiled first.
async function usable(profile, url) {
    const { context, page } = await open(profile);
    const session = await context.newCDPSession(page);
    await page.waitForTimeout(3000);
    await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
    await page.goto(url, { waitUntil: 'commit' });
    const evaluate = async (expression) => (await session.send('Runtime.evaluate', { expression })).result.value;
    let ms = 0;
    for (let waited = 0; !ms && waited < 60; ++waited) {
        await page.waitForTimeout(waited === 0 ? 3000 : 1000);
        ms = await evaluate("performance.getEntriesByName('cotter-usable')[0]?.startTime ?? 0");
    }
    if (!ms) throw new Error('the page does not start');
    await session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => 0));
    await page.waitForTimeout(2500); // all is in the cache, the good image is kept
    await context.close();
    return ms;
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

const site = process.env.COTTER_SITE;
const transferred = readdirSync(site).reduce((sum, name) => sum + gzipSync(readFileSync(join(site, name)), { level: 9 }).length, 0);
line('transferred, gzip', `${(transferred / 1e6).toFixed(2)} MB`, '<= 2.5 MB');

const server = await serve();
const cold = [], warm = [];
for (let i = 0; i < 5; ++i) {
    const profile = join(folder, `start${i}`);
    cold.push(await usable(profile, server.url));
    warm.push(await usable(profile, server.url));
}
line('first usable screen, cold, CPU 4x slower', `${Math.round(median(cold))} ms`, '<= 2500 ms');
line('the same from the cache', `${Math.round(median(warm))} ms`, '<= 1000 ms');

const { page, hands, context } = await open(join(folder, 'photos'));
await hands.start(server.url);
await page.evaluate(() => {
    window.blocks = [];
    new PerformanceObserver((list) => window.blocks.push(...list.getEntries().map((e) => e.duration))).observe({ entryTypes: ['longtask'] });
});
await identify(hands);
await hands.tap('Axle 1, left');
const times = [];
for (const [i, slot] of ['Wheel on', 'Nuts', 'Cap', 'Tread', 'Sidewall'].entries()) {
    await hands.tap(slot);
    const file = bigPhoto(i);
    const box = await hands.find('Take a photo');
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.touchscreen.tap(box.x + box.w / 2, box.y + box.h / 2)]);
    await page.evaluate(() => { document.addEventListener('change', () => { window.chosenAt = performance.now(); }, { capture: true, once: true }); });
    await chooser.setFiles(file);
    await page.waitForFunction(() => [...document.querySelectorAll('#mirror > [data-label="Point"]')].length > 0, null, { timeout: 60000, polling: 10 });
    times.push(await page.evaluate(() => performance.now() - window.chosenAt));
    await hands.rest();
    await hands.back();
}
line('12 MP photo, chooser to taggable', `${Math.round(median(times))} ms`, '<= 1500 ms');
const blocks = await page.evaluate(() => window.blocks);
line('longest block of the page meanwhile', `${Math.round(Math.max(0, ...blocks))} ms`, '<= 100 ms');

const many = [];
for (let i = 5; i < 60; ++i) many.push(bigPhoto(i));
await hands.tap('Add photos');
await hands.choose('Choose photos', many);
await hands.expect('of 55', 60000);
await page.waitForFunction(() => !document.querySelector('#mirror > [data-label="Cancel"]'), null, { timeout: 600000, polling: 200 });
await hands.rest();
await page.waitForTimeout(1000);
const session = await context.newCDPSession(page);
await session.send('HeapProfiler.collectGarbage');
const heap = await page.evaluate(() => ({ program: window.cotter.Module.HEAPU8.length, scripts: performance.memory?.usedJSHeapSize ?? 0 }));
line('memory of the program with 60 photos in the job', `${Math.round(heap.program / 1e6)} MB`, '');
line('and of the scripts', `${Math.round(heap.scripts / 1e6)} MB`, '<= 200 MB together');
await context.close();
process.exit(0);
