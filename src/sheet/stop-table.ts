import { threadKey } from '../design/merge.js';
import { lineName } from '../finding.js';
import { threadColors } from '../formats/dressing.js';
import { numberList } from '../report/table.js';
import { MAY_NOT_HALT, OF_THE_BLOCK } from './cautions.js';
import type { Flow } from './flow.js';
import { flowTable, type SheetCell, type SheetRow } from './flow-table.js';
import type { Halt } from './halts.js';
import { heading, paragraph } from './prose.js';
import { type SheetStop, workedIn } from './sheet-stops.js';
import { drawSwatch, type ThreadMark } from './thread-marks.js';

/** Of a sampler: the number that is sewn beside each of its lines. */
export type SewnNumbers = ReadonlyMap<number | 'outline', number>;

const OPEN_BOX: SheetCell = {
  draw: (page, { x, y }) =>
    page.box({ x, y: y + 0.1, width: 2.9, height: 2.9 }, { line: { color: '#000000', width: 0.25 } }),
};

/** The color stops in the order of the machine, and between them what is done at the halts. */
export function stopTable(
  flow: Flow,
  stops: readonly SheetStop[],
  halts: readonly Halt[],
  marks: ReadonlyMap<string, ThreadMark>,
  numbers?: SewnNumbers,
): void {
  heading(flow, 'Color stops in the order of the machine', 40);
  paragraph(flow, MAY_NOT_HALT);
  if (stops.some(({ kind }) => kind === 'existing')) paragraph(flow, OF_THE_BLOCK);
  const remarks = new Map<number, SheetRow[]>();
  for (const { before, what } of halts) {
    const known = remarks.get(before);
    if (known) known.push({ remark: what });
    else remarks.set(before, [{ remark: what }]);
  }
  const told = (n: number): readonly SheetRow[] => remarks.get(n) ?? [];
  flowTable(
    flow,
    [
      { heading: '', width: 5.2 },
      { heading: 'Stop', width: 10, figures: true },
      { heading: 'Thread', width: 17 },
      { heading: 'What is sewn, in which thread' },
      { heading: numbers ? 'Number' : 'Seams', width: 17 },
      { heading: 'Begins on', width: 16 },
      { heading: 'First stitch', width: 15, figures: true },
      { heading: 'Stitches', width: 16, figures: true },
      { heading: 'Minutes', width: 15, figures: true },
      { heading: 'Optional', width: 17 },
    ],
    [
      ...stops.flatMap((stop) => [...told(stop.stop), stopRow(stop, marks, numbers)]),
      ...told(stops.length + 1),
    ],
  );
}

function stopRow(
  stop: SheetStop,
  marks: ReadonlyMap<string, ThreadMark>,
  numbers?: SewnNumbers,
): SheetCell[] {
  const { thread, beginsOn, firstStitch, seams } = stop;
  const below = [thread ? nameOf(thread) : '', workedIn(stop)].filter(Boolean).join('; ');
  return [
    OPEN_BOX,
    { text: String(stop.stop), bold: true },
    thread ? swatchCell(thread, marks) : { below: 'the block’s' },
    { text: stop.title, below },
    { text: numberList(seams.map((seam) => numbers?.get(seam) ?? seam)) || '-' },
    { text: beginsOn === null ? '-' : placeName(beginsOn, numbers) },
    { text: firstStitch === null ? '-' : String(firstStitch) },
    { text: String(stop.stitches) },
    { text: stop.minutes.toFixed(1) },
    {
      text: stop.optional ? 'yes' : 'no',
      below: stop.optional && stop.together.length ? `with ${numberList(stop.together)}` : '',
    },
  ];
}

const placeName = (line: number | 'outline', numbers: SewnNumbers | undefined): string =>
  numbers?.has(line) ? `number ${numbers.get(line)}` : lineName(line).replace('the ', '');

/** The letter of a thread and its swatch. */
export function swatchCell(
  thread: NonNullable<SheetStop['thread']>,
  marks: ReadonlyMap<string, ThreadMark>,
): SheetCell {
  const mark = marks.get(threadKey(thread))!;
  return {
    draw: (page, { x, y }) => {
      page.text(mark.letter, x, y + 2.75, { size: 2.95, bold: true });
      drawSwatch(page, { x: x + 3.6, y, width: 11, height: 4 }, threadColors(thread), mark.pattern);
    },
  };
}

/** Name and weight of a thread; the weight is not broken over two lines. */
export const nameOf = ({ name, weight }: { readonly name: string; readonly weight: string }): string =>
  `${name} ${weight.replaceAll(' ', '\u00a0')}`;
