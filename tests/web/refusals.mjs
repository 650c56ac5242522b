// What can go wrong in a browser, and how it is said: no room, a store that fails, a second tab, a damaged book, a photo
// that is none, a worker that dies. Nothing is lost, and each is one clear line.
//
// usage: refusals.mjs
import { join } from 'node:path';
import { check, identify, open, photo, scratch, serve } from './cotter_page.mjs';

// Breaks the store as window.broken says: 'quota' at each put, 'abort' of each writing transaction.
function breakStore() {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...values) {
        if (window.broken === 'quota') throw new DOMException('full', 'QuotaExceededError');
        const request = put.apply(this, values);
        if (window.broken === 'abort') this.transaction.abort();
        return request;
    };
}

async function level(hands) {
    await hands.taps('Axle 1, left', 'Hub oil');
}

async function cannotKeep({ page, hands }, how, words) {
    await page.evaluate((what) => { window.broken = what; }, how);
    const box = await hands.find(how === 'quota' ? 'Before: below' : 'Before: at the line');
    await page.touchscreen.tap(box.x + box.w / 2, box.y + box.h / 2);
    await hands.expect(words);
    await page.evaluate(() => { window.broken = ''; });
    await hands.expect('saved '); // tried again by itself
    await hands.rest();
}

async function photoThatIsNone({ hands }) {
    await hands.taps('Photo');
    await hands.choose('Take a photo', { name: 'note.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no photo at all') });
    await hands.expect('note.jpg');
    await hands.expect('Not taken in');
    await hands.choose('Take a photo', { name: 'IMG_1.heic', mimeType: 'image/heic',
        buffer: Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic'), Buffer.alloc(200)]) });
    await hands.expect('IMG_1.heic');
    await hands.back();
}

async function workerDies({ page, hands }) {
    await hands.taps('Photo');
    await page.evaluate(() => {
        const post = Worker.prototype.postMessage;
        Worker.prototype.postMessage = function (message, ...more) {
            Worker.prototype.postMessage = post;
            post.call(this, message, ...more);
            this.onerror(new Event('error'));
        };
    });
    await hands.choose('Take a photo', photo('02_axle1-left_wheel-on.jpg'));
    await hands.expect('the browser stopped the work');
    await hands.choose('Take a photo', photo('02_axle1-left_wheel-on.jpg'));
    await hands.expect('Point', 60000); // the photo's page
    await hands.rest();
}

async function secondTab({ context }, url) {
    const second = await context.newPage();
    await second.goto(url);
    await second.getByText('Cotter is open already').waitFor({ timeout: 30000 });
    check('a second tab leads nowhere', await second.evaluate(() => window.cotter === undefined));
    await second.close();
}

// With the second copy, or from the image that was found sound last.
async function damagedBook(profile, url, second) {
    const browser = await open(profile);
    await browser.page.goto(`${url}manifest.webmanifest`);
    if (!second) await browser.page.evaluate(() => caches.delete('book-spare'));
    await browser.page.evaluate(async () => {
        const request = indexedDB.open('cotter', 1);
        await new Promise((done) => { request.onsuccess = done; });
        const transaction = request.result.transaction('chunks', 'readwrite');
        const store = transaction.objectStore('chunks');
        const keys = await new Promise((done) => { const r = store.getAllKeys(); r.onsuccess = () => done(r.result); });
        for (const key of keys.filter(([path]) => path.startsWith('/book/book.sqlite')))
            store.put(crypto.getRandomValues(new Uint8Array(65536)), key);
        await new Promise((done) => { transaction.oncomplete = done; });
    });
    await browser.hands.start(url).catch(() => {});
    await browser.hands.expect('Before you go on');
    const said = await browser.page.textContent('#notice p');
    check('no word of folders', said.includes('The book was damaged (') && !said.includes('folder'), said);
    console.log(said);
    await browser.page.getByText('Understood').click();
    await browser.page.waitForFunction(() => window.cotter && document.querySelector('#notice').hidden);
    // The sound image may have been taken on a page below the corner's.
    for (let up = 0; up < 3 && !await browser.hands.shows('Before: at the line'); ++up) await browser.hands.back();
    await browser.hands.expect('Before: at the line');
    await browser.context.close();
}

const folder = scratch();
const profile = join(folder, 'profile');
const server = await serve();
const browser = await open(profile);
await browser.context.addInitScript(breakStore);
await browser.hands.start(server.url);
await identify(browser.hands);
await level(browser.hands);
await cannotKeep(browser, 'quota', 'not saved: this device has no room left');
await cannotKeep(browser, 'abort', 'not saved: the browser did not keep it');
await browser.page.reload();
await browser.hands.start(server.url);
await browser.hands.expect('Before: at the line');
await photoThatIsNone(browser);
await workerDies(browser);
await secondTab(browser, server.url);
await browser.page.waitForFunction(async () => {
    const Store = window.cotter.store.constructor;
    return Boolean(await new Store().good());
});
await browser.context.close();
await damagedBook(profile, server.url, true);
await damagedBook(profile, server.url, false);
console.log('no room, a failing store, a second tab, a damaged book, no photo, a dead worker: each said, nothing lost');
process.exit(0);
