import type { ThreadChoice } from '../formats/dressing.js';

const named = (name: string, hex: string): ThreadChoice => ({ name, hex, weight: 'No. 40' });

/**
 * A dozen threads to choose from until a maker names her own. Gold on every seam is the old way with crazy patchwork, so
 * it stands first. Common practice; the colors are our own.
 */
export const PALETTE: readonly ThreadChoice[] = [
  named('Old gold', '#c9a227'),
  named('Garnet', '#8c2f3f'),
  named('Leaf green', '#5f7f42'),
  named('Ivory', '#f1e6c8'),
  named('Sky blue', '#6f9fc2'),
  named('Rose', '#c9788a'),
  named('Plum', '#6d4670'),
  named('Rust', '#b5532c'),
  named('Silver gray', '#b4b8bb'),
  named('Night blue', '#2b3a5e'),
  named('Sea green', '#3f8078'),
  named('Black', '#242124'),
];
