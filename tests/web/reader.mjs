// The hands of a screen reader: they know the page by its accessibility tree only, and press elements, never the canvas.
// From the first start to a photo and a maker's figure, over what is scrolled away.
//
// usage: reader.mjs
import { join } from 'node:path';
import { check, open, photo, scratch, serve } from './cotter_page.mjs';

const server = await serve();
const { context, page, hands, said } = await open(join(scratch(), 'profile'));
const reader = await context.newCDPSession(page);

// What the tree says, in its order: [role, name, whether it can be pressed].
async function tree() {
    await hands.rest();
    const { nodes } = await reader.send('Accessibility.getFullAXTree');
    return nodes.filter((node) => !node.ignored).map((node) => ({ role: node.role?.value, name: node.name?.value ?? '',
        off: (node.properties ?? []).some(({ name, value }) => name === 'disabled' && value.value), id: node.backendDOMNodeId }));
}

let awayPressed = 0;

// Presses the element of that name as a screen reader does: by its own action.
async function press(name) {
    const kinds = ['button', 'radio', 'switch', 'textbox'];
    const found = (await tree()).find((node) => kinds.includes(node.role) && !node.off && (node.name === name || node.name.startsWith(`${name}, `)));
    if (!found) throw new Error(`a reader finds no '${name}': ${JSON.stringify((await tree()).map((n) => `${n.role} ${n.name}`))}`);
    const { object } = await reader.send('DOM.resolveNode', { backendNodeId: found.id });
    const call = async (body) => (await reader.send('Runtime.callFunctionOn',
        { objectId: object.objectId, functionDeclaration: `function() { ${body} }`, userGesture: true, returnByValue: true })).result.value;
    // A reader asks for what it stands on to be shown; the elements must stay where the canvas has them.
    await call('this.scrollIntoView()');
    if (await call("return this.dataset.away === 'true'")) ++awayPressed;
    await call('this.click()');
    await hands.rest();
}

const has = async (name) => (await tree()).some((node) => node.name.includes(name));
async function reads(name) {
    for (let look = 0; look < 50 && !await has(name); ++look) await page.waitForTimeout(100);
    check(`a reader is told '${name}'`, await has(name));
}

await page.setViewportSize({ width: 412, height: 600 }); // more of it is scrolled away
await hands.start(server.url);
for (const name of ['Begin the first job', 'Two', 'Hydraulic disc', 'Oil bath', '8']) await press(name);
await press('Unit');
await hands.type('NUR-07');
await press('To the plan');
await press('Axle 2, right');
const [chooser] = await Promise.all([page.waitForEvent('filechooser'), (async () => { await press('Wheel on'); await press('Take a photo'); })()]);
await chooser.setFiles(photo('02_axle1-left_wheel-on.jpg'));
await reads('Point');
check('a page has a heading', (await tree()).some(({ role, name }) => role === 'heading' && name !== ''));
await press('Back');
await press('Back');
await press('Axle 2, right');
await press('Wheel nuts');
await press("Enter the maker's figure");
for (const key of ['1', '2', '0', 'Done']) await press(key);
await reads('120');
check('something was pressed that was scrolled away', awayPressed > 0, awayPressed);
check('the page said no error', said.length === 0, said);
console.log(`pressed by the reader's action alone, ${awayPressed} times on what was scrolled away`);
await context.close();
await server.stop();
process.exit(0);
