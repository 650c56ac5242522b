// Begins with what takes longest, before the other scripts are there; main.js goes on with it.
'use strict';
globalThis.cotterEarly = {
    async compiled() {
        const answer = await fetch('cotter.wasm');
        const streams = answer.headers.get('Content-Type')?.startsWith('application/wasm');
        return streams ? WebAssembly.compileStreaming(answer) : WebAssembly.compile(await answer.arrayBuffer());
    },
    async data() { return (await fetch('cotter.data')).arrayBuffer(); },
};
for (const what of ['compiled', 'data']) {
    cotterEarly[what] = cotterEarly[what]();
    cotterEarly[what].catch(() => {}); // said by main.js
}
