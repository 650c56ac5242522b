// The screen as elements, for screen readers and tests by label: each target and text of the program at its place, under
// the canvas. A press on one is a press on the canvas there; what is scrolled away is brought to sight first.

const kRoles = { choice: 'radio', toggle: 'switch', chip: 'button', tile: 'button', row: 'button', key: 'button',
    button: 'button', picture: 'button', field: 'textbox' };

function tagOf(item) {
    if (item.kind === 'heading') return 'h1';
    return item.kind === 'text' ? 'p' : 'button';
}

export class Mirror {
    #root; #said; #press; #reach; #shown = new Map();

    // `press(x, y)` taps the canvas there; `reach(id)` scrolls a target to sight, and the mirror with it.
    constructor(root, said, press, reach) {
        this.#root = root;
        this.#said = said;
        this.#press = press;
        this.#reach = reach;
        // Where a browser does not know `overflow: clip`, whoever asks for an element to be shown would shift all of them
        // from their places on the canvas.
        root.addEventListener('scroll', () => root.scrollTo(0, 0));
    }

    show({ layer, items, said }) {
        this.#root.setAttribute('role', layer > 0 ? 'dialog' : 'main');
        if (this.#said.textContent !== said) this.#said.textContent = said;
        const next = new Map(), counts = new Map();
        let before = null;
        for (const item of items) {
            const name = item.id ? `${item.id}` : `${item.kind} ${item.label}`;
            const count = counts.get(name) ?? 0;
            counts.set(name, count + 1);
            const key = `${name} ${count}`;
            const element = this.#element(this.#shown.get(key), item);
            next.set(key, element);
            const place = before ? before.nextSibling : this.#root.firstChild;
            if (place !== element) this.#root.insertBefore(element, place);
            before = element;
        }
        for (const [key, element] of this.#shown) if (next.get(key) !== element) element.remove();
        this.#shown = next;
    }

    #element(old, item) {
        const tag = tagOf(item);
        const element = old?.localName === tag ? old : this.#make(tag);
        const [x, y, w, h] = item.rect;
        element.style.cssText = `left:${x}px;top:${y}px;width:${w}px;height:${h}px`;
        if (tag !== 'button') {
            if (element.textContent !== item.label) element.textContent = item.label;
            return element;
        }
        const label = item.value && item.kind !== 'field' ? `${item.label}, ${item.value}` : item.label;
        set(element, 'role', kRoles[item.kind]);
        set(element, 'aria-label', label);
        set(element, 'data-id', `${item.id}`);
        set(element, 'data-label', item.label);
        set(element, 'data-value', item.value);
        set(element, 'data-away', item.away ? 'true' : null);
        set(element, 'aria-disabled', item.on ? null : 'true');
        set(element, 'aria-checked', ['choice', 'toggle'].includes(item.kind) ? String(item.chosen) : null);
        set(element, 'aria-pressed', item.kind === 'chip' ? String(item.chosen) : null);
        return element;
    }

    #make(tag) {
        const element = document.createElement(tag);
        if (tag !== 'button') return element;
        element.tabIndex = -1; // keys go to the program, which has a focus of its own
        element.addEventListener('click', (event) => {
            event.preventDefault();
            this.#root.scrollTo(0, 0);
            if (element.dataset.away === 'true') this.#reach(Number(element.dataset.id));
            if (element.dataset.away === 'true' || !element.isConnected) return; // something else lies there
            const box = element.getBoundingClientRect();
            this.#press(box.x + box.width / 2, box.y + box.height / 2);
        });
        return element;
    }
}

function set(element, name, value) {
    if (value === null || value === undefined) element.removeAttribute(name);
    else if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}
