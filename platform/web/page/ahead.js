// Fetches and compiles the program beside the page, and is done.
'use strict';
postMessage({ begun: true });
(async () => {
    const answer = await fetch('cotter.wasm');
    const streams = answer.headers.get('Content-Type')?.startsWith('application/wasm');
    const module = streams ? await WebAssembly.compileStreaming(answer) : await WebAssembly.compile(await answer.arrayBuffer());
    postMessage({ module });
})().catch((error) => postMessage({ trouble: String(error?.message ?? error) })).then(close);
