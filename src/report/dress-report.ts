import { type LeftOutReason, reasonsOf } from '../check/accents-left-out.js';
import { type HoopFit, hoopFor } from '../check/hoops.js';
import { account } from '../design/account.js';
import { type Stop, type StopKind, stopsInOrder, type Thread } from '../design/design.js';
import { paceOf } from '../design/pace.js';
import type { Dressed } from '../dress.js';
import { type Finding, worstFirst } from '../finding.js';
import type { AccentCount, EndKind, RowCount, SeamFit, Stretch } from '../fit/fit.js';
import { bothManners, mannerAsked } from '../fit/manner.js';
import type { Manner, Treatment } from '../formats/dressing.js';
import type { Mixed } from '../harmony/mix.js';
import type { Runs } from '../needle/run.js';
import { rounded } from './table.js';

/** The main job's report as the data that programs get. Lengths in mm. */
export interface DressReport {
  readonly stops: readonly StopLine[];
  readonly fits: readonly FitLine[];
  readonly totals: {
    readonly stitches: number;
    readonly stops: number;
    readonly threadM: number;
    readonly bobbinM: number;
    readonly minutes: number;
    readonly widthMm: number;
    readonly heightMm: number;
  };
  /** the hoop that it is for, else the smallest common one that takes it; null where there is none */
  readonly hoop: HoopFit | null;
  /** beads, buttons and charms to put on by hand afterwards, where there are any */
  readonly byHand?: readonly {
    readonly what: string;
    readonly seam: number | 'outline';
    readonly count: number;
  }[];
  readonly outputs: readonly string[];
  /** worst first */
  readonly findings: readonly Finding[];
}

export interface StopLine {
  /** from 1, in the order of the machine */
  readonly stop: number;
  readonly title: string;
  readonly kind: StopKind;
  readonly seams: readonly (number | 'outline')[];
  /** null for a stop that came with the block: a stitch file names no thread */
  readonly thread: Thread | null;
  readonly stitches: number;
  readonly jumps: number;
  readonly trims: number;
  readonly threadM: number;
  readonly bobbinM: number;
  readonly minutes: number;
  /** of the row that is sewn here; none for anything else */
  readonly repeats?: RepeatCount;
  /** of the accent that is sewn here */
  readonly figures?: number;
}

/** Repeats of a row along its line, and how long each is. */
export interface RepeatCount {
  readonly repeats: number;
  /** fitted length by repeats; 0 where nothing fits */
  readonly repeatMm: number;
}

/** What became of an accent: figures asked for, those that stand, and why others were left out. */
export interface AccentLine {
  readonly name: string;
  readonly asked: number;
  readonly placed: number;
  readonly leftOut: readonly LeftOutReason[];
}

/** How one treatment fits its line. */
export interface FitLine extends RepeatCount {
  readonly seam: number | 'outline';
  readonly stitch: string;
  readonly wantedMm: number;
  /** of the stretch furthest from 1 */
  readonly stretch: number;
  readonly endGapMm: readonly [number, number];
  /** how its start and its end are asked to end where it butts into another; none on a ring and on the outline */
  readonly ends?: readonly [Manner, Manner];
  readonly stretches: readonly {
    readonly fromMm: number;
    readonly toMm: number;
    readonly repeats: number;
    readonly repeatMm: number;
    readonly stretch: number;
    readonly ends: readonly [EndKind, EndKind];
    /** whole waves of the guide line; none on the plain seam */
    readonly waves?: number;
  }[];
  /** what the size asked for was multiplied by; null where nothing was laid */
  readonly scale: number | null;
  readonly rows: number;
  /** of each row, the first one's included; none where nothing was laid */
  readonly rowRepeats: readonly RepeatCount[];
  readonly accents: readonly string[];
  readonly accentFigures: readonly AccentLine[];
  /** why it was chosen, where the block was mixed in this run */
  readonly why?: string;
}

/** @param mixed how the dressing was mixed, when it was in this run */
export function dressReport(
  dressed: Dressed,
  outputs: readonly string[],
  mixed?: Pick<Mixed, 'why' | 'findings'>,
): DressReport {
  const { design } = dressed;
  const { stops, totals } = account(design, paceOf(dressed.dressing.machine));
  const lines = allStops(dressed);
  const worked = whatIsWorked(dressed);
  const byHand = byHandLines(dressed);
  return {
    stops: stops.map((cost, i) => ({
      stop: cost.stop,
      title: lines[i].title,
      kind: lines[i].kind,
      seams: lines[i].seams,
      thread: lines[i].thread,
      stitches: cost.stitches,
      jumps: cost.jumps,
      trims: cost.trims,
      threadM: rounded(cost.threadM, 2),
      bobbinM: rounded(cost.bobbinM, 2),
      minutes: rounded(cost.minutes, 1),
      ...worked(lines[i]),
    })),
    fits: fitLines(dressed, mixed?.why),
    totals: {
      stitches: totals.stitches,
      stops: totals.stops,
      threadM: rounded(totals.threadM, 2),
      bobbinM: rounded(totals.bobbinM, 2),
      minutes: rounded(totals.minutes, 1),
      widthMm: rounded(totals.widthMm, 1),
      heightMm: rounded(totals.heightMm, 1),
    },
    hoop: hoopFor(dressed.dressing.hoop, dressed.field),
    ...(byHand.length > 0 && { byHand }),
    outputs,
    findings: worstFirst([...(mixed?.findings ?? []), ...dressed.findings, ...placeNote(dressed)]),
  };
}

/** Where the new stops went in, when nobody said where. */
function placeNote({ block, dressing, design }: Dressed): Finding[] {
  if (!block.existing || dressing.after !== null || !design.before) return [];
  const { stops } = design.before;
  const message = `the new stops go in after stop ${stops}, the last one named as seams; --after puts them elsewhere`;
  return [{ level: 'note', code: 'after-last-seam', message, stop: stops }];
}

type Named = Pick<Stop, 'title' | 'kind' | 'seams'> & {
  readonly thread: Thread | null;
  readonly runs?: Runs;
};

/** What stands at each color stop of the file: those that came with the block, the new ones, those that came after. */
function allStops({ design }: Dressed): Named[] {
  const came = { title: 'came with the block', kind: 'existing', seams: [], thread: null } as const;
  return stopsInOrder(design).map((stop) => stop ?? came);
}

type Worked = Pick<StopLine, 'repeats' | 'figures'>;

/** Tells of a stop which repeats or figures are sewn in it: its runs are those of a layer of a line. */
function whatIsWorked({ lines }: Dressed): (stop: Named) => Worked {
  const worked = new Map<Runs, Worked>();
  for (const { fit, layers } of lines) {
    layers.forEach(({ kind, runs }, l) => {
      const { index } = fit.layers[l];
      // a plain line, where nothing fits, has no repeats
      if (kind === 'row' && fit.rows[index]) worked.set(runs, { repeats: repeatCount(fit.rows[index]) });
      if (kind === 'accent') worked.set(runs, { figures: placed(fit.accents[index]) });
    });
  }
  return ({ runs }) => (runs && worked.get(runs)) ?? {};
}

const repeatCount = ({ repeats, along }: RowCount): RepeatCount => ({
  repeats: rounded(repeats, 3),
  repeatMm: rounded(repeats ? along / repeats : 0, 3),
});

const placed = ({ asked, leftOut }: AccentCount): number => asked - leftOut.length;

/** How a seam's treatment was asked to end; nothing of what has no ends. */
function endsAsked({ seam, stretches }: SeamFit, ends: Treatment['ends'], manner: Manner) {
  const isRing = stretches.some(({ ends: kinds }) => kinds.includes('ring'));
  return seam === 'outline' || isRing ? {} : { ends: bothManners(mannerAsked(ends, manner)) };
}

/** One line for each treatment, in the dressing's order: its first row speaks for the others, which share its fit. */
function fitLines({ lines, dressing }: Dressed, why?: Mixed['why']): FitLine[] {
  return [...lines]
    .sort((a, b) => a.treatment - b.treatment)
    .map(({ fit, treatment }) => {
      const reason = why?.get(fit.seam);
      return {
        ...fitLine(fit, dressing.treatments[treatment]),
        ...endsAsked(fit, dressing.treatments[treatment].ends, dressing.ends),
        ...(reason !== undefined && { why: reason }),
      };
    });
}

function byHandLines({ lines }: Dressed): NonNullable<DressReport['byHand']> {
  return lines.flatMap(({ fit: { seam, marks } }) =>
    [...new Set(marks.map(({ what }) => what))].map((what) => ({
      what,
      seam,
      count: marks.filter((mark) => mark.what === what).length,
    })),
  );
}

function fitLine(fit: SeamFit, { rows, accents = [] }: Treatment): FitLine {
  const repeats = fit.stretches.reduce((sum, stretch) => sum + stretch.repeats, 0);
  const fitted = fit.stretches.reduce(
    (sum, stretch) => sum + (stretch.repeats ? workedAlong(stretch) : 0),
    0,
  );
  const factors = fit.stretches
    .filter((stretch) => stretch.repeats > 0)
    .map((stretch) => repeatOf(stretch) / fit.wanted);
  const names = accents.map(({ ornament, byHand }) => ornament ?? byHand ?? '');
  return {
    seam: fit.seam,
    stitch: fit.stitch,
    repeats,
    repeatMm: rounded(repeats ? fitted / repeats : 0, 3),
    wantedMm: rounded(fit.wanted, 3),
    stretch: rounded(furthestFromOne(factors), 4),
    endGapMm: [rounded(fit.endGap[0], 3), rounded(fit.endGap[1], 3)],
    stretches: fit.stretches.map((stretch) => ({
      fromMm: rounded(stretch.from, 3),
      toMm: rounded(stretch.to, 3),
      repeats: stretch.repeats,
      repeatMm: rounded(repeatOf(stretch), 3),
      stretch: rounded(repeatOf(stretch) / fit.wanted, 4),
      ends: stretch.ends,
      ...(stretch.waves && { waves: stretch.waves.count }),
    })),
    scale: fit.scale === null ? null : rounded(fit.scale, 4),
    rows: rows.length,
    rowRepeats: fit.rows.map(repeatCount),
    accents: names,
    accentFigures: fit.accents.map((accent, index) => ({
      name: names[index],
      asked: accent.asked,
      placed: placed(accent),
      leftOut: reasonsOf(accent.leftOut),
    })),
  };
}

const repeatOf = (stretch: Stretch): number => (stretch.repeats ? workedAlong(stretch) / stretch.repeats : 0);

/** Length of the line that repeats are measured along: the seam, or the waves on it. */
const workedAlong = ({ from, to, waves }: Stretch): number => waves?.along ?? to - from;

/** As a ratio: half is as far from one as double. */
const furthestFromOne = (factors: readonly number[]): number =>
  factors.reduce((far, factor) => (Math.abs(Math.log(factor)) > Math.abs(Math.log(far)) ? factor : far), 1);
