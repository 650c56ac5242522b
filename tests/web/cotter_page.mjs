// A browser on the web app, and hands that use it by what is written on the screen: for the tests beside this file.
// Needs in the environment: COTTER_SITE (the built folder), COTTER_WEB_TOOLS (where playwright-core is installed);
// COTTER_CHROMIUM (default: /usr/bin/chromium); COTTER_LOUD (any word: all that the console says is shown).
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

const { chromium } = createRequire(join(process.env.COTTER_WEB_TOOLS, 'x.js'))('playwright-core');

const kFlags = ['--no-sandbox', '--disable-quic', '--no-first-run', '--disable-background-networking',
    '--disable-component-update', '--disable-sync', '--use-gl=angle', '--use-angle=swiftshader',
    '--enable-unsafe-swiftshader'];
export const kPhone = { width: 412, height: 915 };
export const kRepository = new URL('../../', import.meta.url).pathname;
export const photo = (name) => join(kRepository, 'assets/demo/photos', name);

export function check(what, condition, ...facts) {
    if (!condition) throw new Error(`not so: ${what} ${facts.map((f) => JSON.stringify(f)).join(' ')}`);
}

export function scratch() {
    const folder = mkdtempSync(join(tmpdir(), 'cotter-web-'));
    process.on('exit', () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));
    return folder;
}

// {url, stop()}: Python's own server on a free port of this machine.
export async function serve(site = process.env.COTTER_SITE) {
    const server = spawn('python3', ['-u', '-m', 'http.server', '0', '--bind', '127.0.0.1', '--directory', site],
        { stdio: ['ignore', 'pipe', 'ignore'] });
    process.on('exit', () => server.kill('SIGKILL'));
    const port = await new Promise((resolve, reject) => {
        server.stdout.on('data', (text) => { const found = /port (\d+)/.exec(text); if (found) resolve(found[1]); });
        server.on('exit', () => reject(new Error('the server does not start')));
    });
    return { url: `http://127.0.0.1:${port}/`, stop: () => new Promise((done) => { server.on('exit', done); server.kill('SIGKILL'); }) };
}

// A phone's browser with a profile of its own, so that it can be closed, killed and opened again.
export async function open(profile, { size = kPhone, scale = 2.625, touch = true, ...more } = {}) {
    const context = await chromium.launchPersistentContext(profile, {
        executablePath: process.env.COTTER_CHROMIUM ?? '/usr/bin/chromium', headless: true, args: kFlags, viewport: size,
        deviceScaleFactor: scale, hasTouch: touch, isMobile: touch, acceptDownloads: true, locale: 'en-US',
        timezoneId: 'America/Chicago', ...more });
    const page = context.pages()[0] ?? await context.newPage();
    const said = [];
    if (process.env.COTTER_LOUD) page.on('console', (message) => console.error(message.text()));
    page.on('console', (message) => { if (message.type() === 'error') said.push(message.text()); });
    page.on('pageerror', (error) => said.push(String(error)));
    return { context, page, said, hands: new Hands(page) };
}

export class Hands {
    constructor(page) { this.page = page; }

    // The app is there and at rest; a notice that it does not start is an error.
    async start(url) {
        await this.page.goto(url, { waitUntil: 'commit' });
        await this.page.waitForFunction(() => window.cotter || document.querySelector('#notice button'), null, { timeout: 60000 });
        await this.rest();
    }

    async rest() {
        await this.page.waitForFunction(() => window.cotter?.screen.resting && (window.cotter.disk.settled || window.cotter.disk.settledAlone), null, { timeout: 60000 });
    }

    labels() { return this.page.$$eval('#mirror > *', (all) => all.map((e) => e.dataset.label ?? e.textContent)); }

    async shows(text) { return (await this.page.$$eval('#mirror > *', (all) => all.map((e) => `${e.getAttribute('aria-label') ?? ''} ${e.textContent}`))).some((t) => t.includes(text)); }

    async expect(text, timeout = 20000) {
        const there = (wanted) => [...document.querySelectorAll('#mirror > *, #said, #notice:not([hidden])')]
            .some((e) => `${e.getAttribute('aria-label') ?? ''} ${e.textContent}`.includes(wanted));
        await this.page.waitForFunction(there, text, { timeout }).catch(async () => {
            throw new Error(`'${text}' is not on the screen: ${JSON.stringify(await this.labels())}`);
        });
    }

    #box(label, nth) {
        return this.page.$$eval('#mirror > [data-label]', (all, [wanted, n]) => {
            const found = all.filter((e) => e.dataset.label === wanted && e.getAttribute('aria-disabled') !== 'true')[n - 1];
            if (!found) return null;
            const box = found.getBoundingClientRect();
            return { x: box.x, y: box.y, w: box.width, h: box.height, away: found.dataset.away === 'true' };
        }, [label, nth]);
    }

    async swipe(dy) {
        const { width, height } = this.page.viewportSize();
        const touch = await this.page.context().newCDPSession(this.page);
        const at = (y) => [{ x: width / 2, y, id: 1 }];
        const from = height / 2 + dy / 2;
        await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(from) });
        for (let i = 1; i <= 10; ++i) {
            await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(from - dy * i / 10) });
            await this.page.waitForTimeout(16);
        }
        await this.page.waitForTimeout(120); // a finger that rests does not fling
        await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
        await touch.detach();
        await this.rest();
    }

    // Where on the screen the target is, scrolled to when it must.
    async find(label, nth = 1) {
        await this.rest();
        const { height } = this.page.viewportSize();
        for (let look = 0; look < 30; ++look) {
            const box = await this.#box(label, nth);
            if (!box) throw new Error(`there is no '${label}': ${JSON.stringify(await this.labels())}`);
            if (!box.away && box.h >= 30 && box.y >= 60 && box.y + box.h <= height) return box;
            await this.swipe(Math.max(-300, Math.min(300, box.y + box.h / 2 - height / 2)));
        }
        throw new Error(`'${label}' cannot be scrolled to`);
    }

    async tap(label, { nth = 1, at = [0.5, 0.5] } = {}) {
        const box = await this.find(label, nth);
        await this.page.touchscreen.tap(box.x + box.w * at[0], box.y + box.h * at[1]);
        await this.rest();
    }

    async taps(...labels) { for (const label of labels) await this.tap(label); }

    // Into the field that is being edited.
    async type(text) {
        await this.page.waitForSelector('.field');
        await this.page.keyboard.insertText(text);
        await this.page.keyboard.press('Enter');
        await this.rest();
    }

    // The label's tap opens a chooser; these files are chosen.
    async choose(label, files) {
        const box = await this.find(label);
        const [chooser] = await Promise.all([this.page.waitForEvent('filechooser'),
            this.page.touchscreen.tap(box.x + box.w / 2, box.y + box.h / 2)]);
        await chooser.setFiles(files);
    }

    async back() {
        await this.rest();
        await this.page.goBack({ waitUntil: 'commit' }).catch(() => {});
        await this.rest();
    }
}

// The book as the browser's store has it, into a folder for the program itself.
export async function takeBook(page, folder) {
    const files = await page.evaluate(async () => {
        const Store = window.cotter.store.constructor;
        const { files, blobs } = await new Store().load();
        const text = async (blob) => new Promise((done) => {
            const reader = new FileReader();
            reader.onload = () => done(reader.result.split(',', 2)[1] ?? '');
            reader.readAsDataURL(blob);
        });
        const out = [];
        for (const [path, bytes] of files) out.push([path, await text(new Blob([bytes]))]);
        for (const [path, blob] of blobs) out.push([path, await text(blob)]);
        return out;
    });
    for (const [path, base64] of files) {
        const to = join(folder, path.replace(/^\/book\//, ''));
        mkdirSync(dirname(to), { recursive: true });
        writeFileSync(to, Buffer.from(base64, 'base64'));
    }
    return files.map(([path]) => path);
}

// A trailer with two axles, oil bath hubs and disc brakes, eight studs; on its plan afterwards.
export async function identify(hands, first = 'Begin the first job') {
    await hands.taps(first, 'Two', 'Hydraulic disc', 'Oil bath', '8', 'Unit');
    await hands.type('NUR-07');
    await hands.tap('To the plan');
}

// From the plan to the packet in the folder: its path.
export async function handOver({ hands, page }, folder) {
    await hands.taps('Hand over', 'Sign off', 'Name of the technician');
    await hands.type('R. Alder');
    await hands.taps('Save the name', 'I read this and told the customer', 'Sign', 'Make the packet');
    await hands.expect('found valid', 120000);
    const box = await hands.find('Send the packet');
    const [download] = await Promise.all([page.waitForEvent('download'),
        page.touchscreen.tap(box.x + box.w / 2, box.y + box.h / 2)]);
    const path = join(folder, download.suggestedFilename());
    await download.saveAs(path);
    return path;
}
