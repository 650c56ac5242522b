// Photos and files in, packets out: the browser's camera and chooser, its share sheet, a download where there is none.

const kAccept = { camera: 'image/*', photos: 'image/*', table: '.csv,text/csv' };
const kHeic = /\.(heic|heif)$/i;

export class Picker {
    #blobs; #chosen; #busy; #last = 0;

    // `chosen(paths)`; `busy(text)` says what is being done with what was chosen, '' when it is done.
    constructor(blobs, chosen, busy) {
        this.#blobs = blobs;
        this.#chosen = chosen;
        this.#busy = busy;
    }

    pick(what) {
        const input = document.createElement('input');
        input.type = 'file';
        input.accept = kAccept[what];
        if (what === 'camera') input.setAttribute('capture', 'environment');
        if (what === 'photos') input.multiple = true;
        input.addEventListener('change', () => this.take([...input.files]));
        input.style.display = 'none';
        document.body.append(input); // some browsers answer only an input of the page
        input.click();
        setTimeout(() => input.remove(), 600000);
    }

    async take(files) {
        const paths = [];
        for (const file of files) {
            const { name, blob } = await this.#readable(file);
            const path = `/inbox/${++this.#last}/${name.replace(/[/\u0000-\u001f]/g, '_')}`;
            this.#blobs.set(path, blob);
            paths.push(path);
        }
        this.#busy('');
        if (paths.length > 0) this.#chosen(paths);
    }

    // Apple's photo format is turned into JPEG where the browser can read it; where not, the program says so itself.
    async #readable(file) {
        if (!kHeic.test(file.name) && !/hei[cf]/.test(file.type)) return { name: file.name, blob: file };
        try {
            this.#busy(`Reading ${file.name}`);
            const picture = await createImageBitmap(file);
            const canvas = new OffscreenCanvas(picture.width, picture.height);
            canvas.getContext('2d').drawImage(picture, 0, 0);
            picture.close();
            const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.95 });
            return { name: file.name.replace(kHeic, '') + '.jpg', blob };
        } catch {
            return { name: file.name, blob: file };
        }
    }

    // `bytes`: of a file that is no blob.
    async handOut(path, bytes) {
        const name = path.split('/').pop();
        const type = name.endsWith('.zip') ? 'application/zip' : 'text/csv';
        const file = new File([bytes], name, { type });
        if (navigator.canShare?.({ files: [file] })) {
            try {
                return await navigator.share({ files: [file], title: name });
            } catch (error) {
                if (error.name === 'AbortError') return; // the user closed the sheet
            }
        }
        const link = document.createElement('a');
        link.href = URL.createObjectURL(file);
        link.download = name;
        link.click();
        setTimeout(() => URL.revokeObjectURL(link.href), 60000);
    }
}
