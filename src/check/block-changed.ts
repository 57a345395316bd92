import type { Finding } from '../finding.js';

/** The file of a block is another than when its dressing was saved. */
export const blockChanged = (file: string): Finding => ({
  level: 'warning',
  code: 'block-changed',
  message: `${file} has changed since the dressing was saved; its seams were found again by their middle and ends, so look whether each has what it should have`,
});
