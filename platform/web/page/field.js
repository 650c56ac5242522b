// The field that is being edited: a real one of the page over the drawn one, so that its keyboard, dictation, paste and
// suggestions work. It has the text from when it is entered until it is left; the program is told of each change.

const kModes = {
    plain: { autocapitalize: 'off', autocorrect: 'off', spellcheck: 'false', inputmode: 'text' },
    note: { autocapitalize: 'sentences', autocorrect: 'on', spellcheck: 'true', inputmode: 'text' },
    number: { autocapitalize: 'off', autocorrect: 'off', spellcheck: 'false', inputmode: 'decimal' },
    phone: { autocapitalize: 'off', autocorrect: 'off', spellcheck: 'false', inputmode: 'tel' },
    email: { autocapitalize: 'off', autocorrect: 'off', spellcheck: 'false', inputmode: 'email' },
};

export class Field {
    #element = null; #id = 0;

    // `changed(text)` and `left()` tell the program.
    constructor(changed, left) {
        Object.assign(this, { changed, left });
    }

    get editing() { return this.#element !== null; }

    show(edit) {
        if (this.#element && this.#id === edit.id) return this.#place(edit);
        this.hide();
        this.#id = edit.id;
        const element = document.createElement(edit.kind === 'note' ? 'textarea' : 'input');
        element.className = 'field';
        element.setAttribute('aria-label', edit.label);
        element.setAttribute('autocomplete', 'off');
        for (const [name, value] of Object.entries(kModes[edit.kind])) element.setAttribute(name, value);
        element.value = edit.text;
        element.addEventListener('input', () => this.changed(fitted(element, edit.max)));
        element.addEventListener('blur', () => this.#leave());
        element.addEventListener('keydown', (event) => {
            event.stopPropagation();
            if (event.key === 'Escape' || (event.key === 'Enter' && edit.kind !== 'note')) element.blur();
        });
        this.#element = element;
        this.#place(edit);
        document.body.append(element);
        element.focus({ preventScroll: true });
        element.setSelectionRange?.(element.value.length, element.value.length);
    }

    #place({ x, y, w, h }) {
        Object.assign(this.#element.style, { left: `${x}px`, top: `${y}px`, width: `${w}px`, height: `${h}px` });
    }

    #leave() {
        if (!this.#element) return;
        this.hide();
        this.left();
    }

    hide() {
        const element = this.#element;
        this.#element = null;
        element?.remove();
    }
}

// The text, no longer than the program takes it.
function fitted(element, most) {
    const coder = new TextEncoder();
    while (coder.encode(element.value).length > most) element.value = [...element.value].slice(0, -1).join('');
    return element.value;
}
