import { baseName } from '../../src/formats/base-name.js';
import type { OutputKind } from '../core/messages.js';
import { whileTelling } from './actions.js';
import { askAbout } from './core-call.js';
import { allDrawn } from './drawing/board.js';
import { pngOf } from './png.js';
import { told, type Work, work } from './work.js';

interface Taken {
  readonly kind: OutputKind | 'png' | 'both';
  readonly title: string;
  readonly about: string;
  readonly ending: string;
}

/** What can be taken away of this work, and what is to be known of it. */
export function takenOf({ dressing: { block }, file }: Work): readonly Taken[] {
  const kinds = TAKEN.filter(
    ({ kind }) => (kind !== 'alone' || block.stops) && (kind !== 'both' || (file && block.svg === undefined)),
  );
  if (!file || block.svg !== undefined) return kinds;
  const about = `opens only with ${file.name} beside it`;
  return kinds.map((one) => (one.kind === 'dressing' ? { ...one, about } : one));
}

/** What can be taken away, in the order in which it is wanted. */
const TAKEN: readonly Taken[] = [
  { kind: 'dst', title: 'Stitch file', about: 'the whole block, for the machine', ending: '.dst' },
  {
    kind: 'alone',
    title: 'Dressing alone',
    about: 'a stitch file of the new stops only',
    ending: '-alone.dst',
  },
  {
    kind: 'sampler',
    title: 'Sampler',
    about: 'every treatment once, to sew on scrap tonight',
    ending: '-sampler.dst',
  },
  { kind: 'sheet', title: 'Sew sheet', about: 'to lay beside the machine, PDF', ending: '-sheet.pdf' },
  {
    kind: 'pattern',
    title: 'Transfer pattern',
    about: 'to work it by hand, PDF',
    ending: '-pattern.pdf',
  },
  {
    kind: 'dressing',
    title: 'The work itself',
    about: 'to open again, here or elsewhere',
    ending: '.dressing.json',
  },
  {
    kind: 'both',
    title: 'The work and its block',
    about: 'both files, to be kept together',
    ending: '.dressing.json',
  },
  { kind: 'png', title: 'Picture', about: 'as on the table, PNG', ending: '.png' },
  { kind: 'svg', title: 'Drawing', about: 'at actual size, SVG', ending: '.svg' },
  { kind: 'csv', title: 'List of stops', about: 'for a spreadsheet', ending: '.csv' },
];

export const takeAway = (kind: Taken['kind']) =>
  whileTelling('Getting it ready', async () => {
    await allDrawn();
    const now = work.value;
    if (!now) return;
    const { dressing } = now;
    const asked = kind === 'png' ? 'svg' : kind === 'both' ? 'dressing' : kind;
    const bytes = await askAbout(now.file, 'output', { dressing, kind: asked });
    const file = kind === 'png' ? await pngOf(bytes) : new Blob([bytes as BlobPart]);
    const name = baseName(dressing.block.file) + TAKEN.find((one) => one.kind === kind)!.ending;
    handOver(file, name);
    if (kind === 'both' && now.file) handOver(new Blob([now.file.bytes as BlobPart]), now.file.name);
    told.value = kind === 'both' ? `${name} and ${now.file?.name} are ready` : `${name} is ready`;
  });

export function handOver(file: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
