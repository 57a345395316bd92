import saved from '../../gallery/demo/panel.dressing.json?raw';
import panel from '../../gallery/demo/panel.svg?raw';
import type { GivenFile } from './messages.js';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The demo panel and its dressing, with which the page opens. */
export const demoFiles = (): readonly GivenFile[] => [
  { name: 'panel.dressing.json', bytes: bytes(saved) },
  { name: 'panel.svg', bytes: bytes(panel) },
];
