import { packed } from './pack.js';
import { readyDemo } from './ready.js';

/** What the page opens with, as a text that it carries; made when this module is first loaded. */
export const readyText = packed(await readyDemo());
