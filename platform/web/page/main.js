// The page's scripts in one file: it starts the page, and is where the workers have what they share with it.
import { Blobs } from './blobs.js';
import createCotter from './cotter.js';
import { layOutBook } from './disk.js';
import { layOutLetters } from './letters.js';
import { begin } from './page.js';

export { Blobs, createCotter, layOutBook, layOutLetters };

if (globalThis.document) begin();
