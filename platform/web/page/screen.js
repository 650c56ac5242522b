// Frames and input: the canvas's pointers, wheel and keys go into the program, which says when it wants a frame. While
// nothing happens no frame is asked for.

const kDown = 0, kMove = 1, kUp = 2, kCancel = 3; // of FingerPhase

export class Screen {
    resting = false; // no frame is asked for
    #program; #canvas; #asked = false; #timer = 0; #insets; #drawn;

    // `drawn()` is called after each frame.
    constructor(program, canvas, drawn) {
        this.#program = program;
        this.#canvas = canvas;
        this.#drawn = drawn;
        this.#insets = document.createElement('div');
        this.#insets.id = 'insets';
        document.body.append(this.#insets);
    }

    // What the page has room for, as cotter_open and cotter_resize take it.
    size() {
        const style = getComputedStyle(this.#insets);
        const inset = (side) => parseFloat(style[`padding${side}`]) || 0;
        const view = window.visualViewport;
        const keyboard = view ? Math.max(0, window.innerHeight - view.height - view.offsetTop) : 0;
        return [window.innerWidth, window.innerHeight, window.devicePixelRatio, inset('Left'), inset('Top'),
            inset('Right'), Math.max(inset('Bottom'), keyboard)];
    }

    listen() {
        const canvas = this.#canvas;
        const on = (type, handle) => canvas.addEventListener(type, handle, { passive: false });
        on('pointerdown', (e) => { canvas.setPointerCapture?.(e.pointerId); this.#pointer(e, kDown); });
        on('pointermove', (e) => this.#pointer(e, kMove));
        on('pointerup', (e) => { this.#pointer(e, kUp); this.now(); });
        on('pointercancel', (e) => this.#pointer(e, kCancel));
        on('pointerleave', (e) => { if (e.pointerType === 'mouse') { this.#program.mouseLeft(); this.soon(); } });
        on('wheel', (e) => { e.preventDefault(); this.#program.wheel(-e.deltaX / 100, -e.deltaY / 100); this.soon(); });
        on('contextmenu', (e) => e.preventDefault());
        on('touchstart', (e) => e.preventDefault());
        on('webglcontextlost', (e) => { e.preventDefault(); this.lost?.(); });
        for (const [type, down] of [['keydown', 1], ['keyup', 0]])
            window.addEventListener(type, (e) => this.#key(e, down));
        const resized = () => { this.#program.resize(...this.size(), performance.now()); this.soon(); };
        window.addEventListener('resize', resized);
        window.visualViewport?.addEventListener('resize', resized);
        document.addEventListener('visibilitychange', () => { this.#program.happened(); this.soon(); });
    }

    #pointer(event, phase) {
        event.preventDefault();
        const { clientX: x, clientY: y } = event;
        if (event.pointerType === 'mouse')
            this.#program.mouse(x, y, phase === kMove ? -1 : [0, 2, 1][event.button] ?? -1, phase === kDown ? 1 : 0, performance.now());
        else
            this.#program.finger(event.pointerId, x, y, phase, performance.now());
        this.soon();
    }

    #key(event, down) {
        if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement) return;
        if (event.ctrlKey || event.altKey || event.metaKey) return;
        if (this.#program.key(event.key, down)) event.preventDefault();
        this.soon();
    }

    // A tap, as if by a finger.
    press(x, y) {
        this.#program.finger(-1, x, y, kDown, performance.now());
        this.#program.finger(-1, x, y, kUp, performance.now() + 1);
        this.now();
    }

    soon() {
        this.resting = false;
        if (this.#asked) return;
        this.#asked = true;
        clearTimeout(this.#timer);
        requestAnimationFrame(() => { this.#asked = false; this.#frame(); });
    }

    // Some frames at once, within the event that ended a tap: a chooser or a keyboard is opened by browsers only there.
    now() {
        for (let i = 0; i < 4; ++i) this.#program.frame(performance.now());
        this.soon();
    }

    #frame() {
        const next = this.#program.frame(performance.now());
        this.frames = (this.frames ?? 0) + 1;
        if (this.frames === 1) this.first?.();
        this.#drawn(next < 0 || next > 50);
        clearTimeout(this.#timer);
        this.resting = next < 0 || next > 50;
        if (next === 0) this.soon();
        else if (next > 0) this.#timer = setTimeout(() => this.soon(), next);
    }
}
