// Pictures of the web app's pages on a phone, on its side and on a desk, for people to look at; and what must hold of
// every one of them: the canvas is not empty, the manifest has no errors, icons are there, no frame is drawn at rest.
//
// usage: looks.mjs FOLDER
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { check, identify, open, photo, scratch, serve } from './cotter_page.mjs';

const shots = process.argv[2];
mkdirSync(shots, { recursive: true });

// How many colours the middle of the screen has: an empty canvas has one.
async function colours(page) {
    const png = (await page.screenshot()).toString('base64');
    return page.evaluate(async (base64) => {
        const picture = await createImageBitmap(new Blob([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))]));
        const canvas = new OffscreenCanvas(64, 64);
        const context = canvas.getContext('2d');
        context.drawImage(picture, 0, 0, 64, 64);
        return new Set(new Uint32Array(context.getImageData(0, 0, 64, 64).data.buffer)).size;
    }, png);
}

async function installable(page) {
    const session = await page.context().newCDPSession(page);
    const { errors, url } = await session.send('Page.getAppManifest');
    check('the manifest has no errors', url !== '' && errors.length === 0, errors);
    const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
    const others = installabilityErrors.filter((e) => e.errorId !== 'in-incognito');
    check('nothing stands against installing it', others.length === 0, others);
    const manifest = await page.evaluate(async () => (await fetch('manifest.webmanifest')).json());
    for (const icon of manifest.icons) {
        const [width] = icon.sizes.split('x').map(Number);
        const real = await page.evaluate(async (src) => (await createImageBitmap(await (await fetch(src)).blob())).width, icon.src);
        check('an icon is as large as the manifest says', real === width, icon, real);
    }
    console.log(`manifest and ${manifest.icons.length} icons: no errors`);
}

async function restsAtNoFrame(page) {
    const frames = () => page.evaluate(() => window.cotter.screen.frames);
    await page.waitForTimeout(500);
    const before = await frames();
    await page.waitForTimeout(10000);
    const drawn = (await frames()) - before;
    check('no frame is drawn in ten seconds of rest', drawn === 0, drawn);
    console.log('frames in 10 s of rest: 0');
}

// The first canvas of a browser that cannot run scripts of a page's content policy would be white: so it is looked at.
async function shoot(browser, name) {
    await browser.hands.rest();
    await browser.page.waitForTimeout(300); // pictures come a moment later
    await browser.page.screenshot({ path: join(shots, `${name}.png`) });
    check(`${name} is drawn`, await colours(browser.page) > 3);
}

async function walk(name, options) {
    const browser = await open(join(scratch(), 'profile'), options);
    const { hands, page } = browser;
    await hands.start(server.url);
    await shoot(browser, `${name}_1_yard_empty`);
    await identify(hands);
    await shoot(browser, `${name}_2_plan`);
    await hands.taps('Axle 1, left');
    await shoot(browser, `${name}_3_corner`);
    await hands.taps('Wheel on');
    await shoot(browser, `${name}_4_photos`);
    await hands.choose('Take a photo', photo('02_axle1-left_wheel-on.jpg'));
    await hands.expect('Point', 60000);
    await hands.tap('Photo', { at: [0.5, 0.48] });
    await shoot(browser, `${name}_5_finding`);
    await hands.taps('Hub: oil thrown over the wheel', 'Done');
    await shoot(browser, `${name}_6_photo`);
    await hands.taps('To the place');
    await hands.tap('Wheel nuts');
    await hands.tap("Enter the maker's figure");
    await shoot(browser, `${name}_7_keypad`);
    await hands.taps('1', '2', '0', 'Done');
    await hands.tap('Document and page');
    await browser.page.waitForSelector('.field');
    await browser.page.keyboard.insertText('service sheet, page 14');
    await shoot(browser, `${name}_8_field`);
    await browser.page.keyboard.press('Enter');
    await hands.tap('Save');
    await shoot(browser, `${name}_9_torque`);
    if (name === 'phone') {
        await installable(page);
        await restsAtNoFrame(page);
    }
    check('nothing was written to the console', browser.said.length === 0, browser.said);
    await browser.context.close();
}

const server = await serve();
await walk('phone', {});
await walk('side', { size: { width: 915, height: 412 } });
await walk('desk', { size: { width: 1280, height: 800 }, scale: 1, touch: true });
console.log(`pictures: ${shots}`);
process.exit(0);
