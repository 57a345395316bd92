import type { StitchRecord } from '../../../src/stitches/stitch-record.js';

/** A stitch of one's own to begin with: the thread led along the seam, and nothing else yet. */
export const freshStitch = (title: string): StitchRecord => ({
  format: 1,
  title,
  otherNames: [],
  family: 'my own',
  for: 'Made on the bench.',
  sources: ['our own'],
  parameters: {
    repeat: { title: 'Repeat', unit: 'mm', default: 8, min: 4, max: 20 },
    width: { title: 'Width', unit: 'mm', default: 8, min: 4, max: 20 },
  },
  symmetry: 'none',
  halves: false,
  corner: 'turn',
  growth: 'on',
  smallest: { repeat: 4, width: 4 },
  points: { start: [0, 0], next: ['length', 0] },
  legs: [{ name: 'along', kind: 'straight', from: 'start', to: 'next' }],
  joins: { next: 'start' },
});

/** A copy of a stitch's file, under a title of its own; all else as it was written. */
export function copyOf(text: string, title: string): StitchRecord {
  const { $schema: _, ...record } = JSON.parse(text);
  return { ...record, title };
}

/** A name as files of a library have it: small letters, figures and hyphens. */
export function nameFor(title: string): string {
  const plain = title
    .normalize('NFD')
    .toLowerCase()
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return plain === '' || /^(con|prn|aux|nul|com\d|lpt\d)$/.test(plain) ? 'my-stitch' : plain;
}
