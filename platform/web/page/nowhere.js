// A page that is not there: what SDL and WebGL ask of one, answered so that a start runs through and nothing is drawn. For
// the rehearsal in ahead.js.

const nothing = () => ({}); // an object, as names are written into some answers; as a number it is 0
const answering = (known) => new Proxy(known, { get: (answers, name) => answers[name] ?? nothing });

const graphics = answering({
    checkFramebufferStatus: () => 0x8CD5, // GL_FRAMEBUFFER_COMPLETE
    getActiveUniform: () => ({ name: 'u', size: 1 }),
    getParameter: () => 4096, // whatever it is: a texture of that size is allowed
    getProgramParameter: () => 1,
    getSupportedExtensions: () => [],
});

// Gives this thread a page of that size in CSS pixels; its canvas.
export function pretend(width, height, devicePixelRatio) {
    const canvas = answering({ width, height, id: 'canvas', style: {}, getContext: () => graphics,
        getBoundingClientRect: () => ({ left: 0, top: 0, width, height }) });
    const document = answering({ title: '', querySelector: () => canvas });
    Object.assign(globalThis, { document, window: globalThis, screen: { width, height }, innerWidth: width, innerHeight: height,
        devicePixelRatio });
    return canvas;
}
