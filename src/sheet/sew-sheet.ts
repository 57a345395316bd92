import type { StopRole } from '../block/roles/role.js';
import { threadKey } from '../design/merge.js';
import type { Dressed } from '../dress.js';
import { lineName } from '../finding.js';
import type { DressReport } from '../report/dress-report.js';
import { findingText } from '../report/look-here.js';
import { numberList } from '../report/table.js';
import { CAUTIONS } from './cautions.js';
import { Flow, MARGIN } from './flow.js';
import { flowTable } from './flow-table.js';
import { writeFooters } from './footers.js';
import { type Halt, haltsOf } from './halts.js';
import { hoopPlan } from './hoop-plan.js';
import { lettered } from './lettered.js';
import { PAPERS, type PaperName } from './page-sizes.js';
import { newPaper } from './paper.js';
import { type PictureSize, pictureLayout } from './picture-layout.js';
import { picturePage } from './picture-page.js';
import { heading, item } from './prose.js';
import { type SheetStop, sheetStops } from './sheet-stops.js';
import { nameOf, type SewnNumbers, stopTable, swatchCell } from './stop-table.js';
import { type ThreadMark, threadMarks } from './thread-marks.js';

/** How a sheet is to be laid out. */
export interface SheetAsk {
  readonly paper: PaperName;
  /** usual: at actual size where the page takes it, else smaller for what a sewing field takes */
  readonly picture?: PictureSize;
  /** of a sampler */
  readonly numbers?: SewnNumbers;
}

/** What a sheet tells, for programs. */
export interface SheetTold {
  readonly paper: PaperName;
  readonly pages: number;
  /** of the picture; 1 at actual size */
  readonly scale: number;
  readonly stops: readonly Pick<SheetStop, 'stop' | 'firstStitch' | 'beginsOn' | 'optional' | 'together'>[];
  readonly halts: readonly Halt[];
}

/**
 * The sheet that goes to the machine, as PDF: the picture in the hoop, what is to be set up, stop by stop what is sewn and
 * what is done at the halts, what is put on by hand, threads, cautions.
 *
 * @param roles of the block's own stops; none for a drawing
 * @throws InputError when the block is larger than the page, see pictureLayout
 */
export async function sewSheet(
  dressed: Dressed,
  report: DressReport,
  roles: readonly StopRole[],
  { paper: name, picture, numbers }: SheetAsk,
): Promise<{ readonly bytes: Uint8Array; readonly told: SheetTold }> {
  const layout = pictureLayout(dressed, hoopPlan(dressed), name, picture);
  const paper = await newPaper({ title: `${dressed.block.name}, sew sheet` });
  const flow = new Flow(paper, layout.page, PAPERS[name]);
  const stops = sheetStops(dressed, report, roles);
  const halts = haltsOf(dressed, roles);
  const marks = threadMarks(stops.map(({ thread }) => thread));
  const letters = handLetters(report);

  picturePage(flow, dressed, report, layout, { marks, letters, seams: !numbers });
  lookAt(flow, report);
  stopTable(flow, stops, halts, marks, numbers);
  byHandTable(flow, report, letters);
  threadTable(flow, stops, marks);
  cautions(flow);
  writeFooters(paper, `${dressed.block.name}: sew sheet`, MARGIN);
  return {
    bytes: await paper.bytes(),
    told: {
      paper: name,
      pages: paper.pages.length,
      scale: layout.scale,
      stops: stops.map(({ stop, firstStitch, beginsOn, optional, together }) => ({
        stop,
        firstStitch,
        beginsOn,
        optional,
        together,
      })),
      halts,
    },
  };
}

/** Small letters for each thing that is put on by hand. */
function handLetters({ byHand = [] }: DressReport): ReadonlyMap<string, string> {
  const things = [...new Set(byHand.map(({ what }) => what))];
  return new Map(things.map((what, i) => [what, lettered(i).toLowerCase()]));
}

function byHandTable(flow: Flow, { byHand }: DressReport, letters: ReadonlyMap<string, string>): void {
  if (!byHand) return;
  heading(flow, 'By hand afterwards, not sewn');
  flowTable(
    flow,
    [
      { heading: 'In the picture', width: 24 },
      { heading: 'What' },
      { heading: 'Where', width: 95 },
      { heading: 'How many', width: 22, figures: true },
    ],
    [...letters].map(([what, letter]) => {
      const own = byHand.filter((one) => one.what === what);
      return [
        { text: letter },
        { text: what },
        {
          text: own
            .map(({ count, seam }) => `${count} on ${lineName(seam)}`.replaceAll(' ', '\u00a0'))
            .join(', '),
        },
        { text: String(own.reduce((sum, { count }) => sum + count, 0)) },
      ];
    }),
  );
}

function threadTable(flow: Flow, stops: readonly SheetStop[], marks: ReadonlyMap<string, ThreadMark>): void {
  if (marks.size === 0) return;
  heading(flow, 'Threads to lay out');
  const rows = [...marks.keys()].map((key) => {
    const own = stops.filter(({ thread }) => thread && threadKey(thread) === key);
    const thread = own[0].thread!;
    const sewn = own.reduce((sum, { threadM }) => sum + threadM, 0);
    return [
      swatchCell(thread, marks),
      { text: nameOf(thread) },
      { text: codeOf(thread) },
      { text: numberList(own.map(({ stop }) => stop)) },
      { text: sewn.toFixed(1) },
    ];
  });
  flowTable(
    flow,
    [
      { heading: 'Thread', width: 20 },
      { heading: 'Name' },
      { heading: 'Code, finish, color', width: 50 },
      { heading: 'Stops', width: 45 },
      { heading: 'm', width: 16, figures: true },
    ],
    rows,
  );
}

const codeOf = (thread: { readonly code?: string; readonly finish?: string; readonly hex: string }): string =>
  [thread.code, thread.finish, thread.hex].filter(Boolean).join(', ');

/** What is wrong or worth a look before thread is used; what is merely told stands in the report. */
function lookAt(flow: Flow, { findings }: DressReport): void {
  const worst = findings.filter(({ level }) => level !== 'note');
  if (worst.length === 0) return;
  heading(flow, 'Look here first');
  for (const finding of worst.slice(0, MOST_TOLD)) item(flow, findingText(finding));
  if (worst.length > MOST_TOLD) item(flow, `and ${worst.length - MOST_TOLD} more in the report`);
}

const MOST_TOLD = 12;

function cautions(flow: Flow): void {
  heading(flow, 'At the machine', 40);
  for (const caution of CAUTIONS) item(flow, caution);
}
