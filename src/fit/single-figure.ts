import { lineName } from '../finding.js';
import type { Unit } from '../stitches/stitch.js';
import { figuresAlone, sizeOf } from './alone.js';
import { shifted } from './band.js';
import type { Chain } from './fit.js';
import { cutsOf, endsOf, gapsOf, partsOf, type SpanFit, type SpanQuestion } from './fit-span.js';
import { lengthOf } from './kept-legs.js';
import type { Laying } from './lay.js';
import { type Cuts, type Laid, layRows } from './lay-rows.js';
import { losesAny } from './lost.js';
import { wholeReach } from './rows.js';
import type { Sized } from './sized.js';
import { slimFigures } from './slim-figures.js';
import { SHORTEST_SHARE } from './span-counts.js';

/** What stays bare to both sides of a figure is no longer than the figure reaches out, or than this, mm: a dot is lost on a seam. */
const BARE_BESIDE = 1.5;
/** A figure of whose thread less than this share is left is none. */
const LEAST_SHOWN = 0.5;
const NO_CUTS: Cuts = { thread: [], figures: [], within: null };

/**
 * Where not even one repeat fits, one figure of the first row in the middle, at the stitch's smallest good size: the
 * whole unit if it stands by itself, else the best part of one that does, see figuresAlone; as long as a repeat of that size
 * is, or as short as one may be, or slimmer still. Null where nothing would lie within the ends of the span uncut.
 */
export function singleFigure(question: SpanQuestion): SpanFit | null {
  const { span, rows } = question;
  if (span.ring || span.corners.length > 0 || rows.laid > 0) return null;
  const { sized } = rows;
  const scale = Math.min(sized.least, question.scale);
  const from = span.start.at + span.start.setback;
  const to = span.end.at - span.end.setback;
  if (to <= from) return null;
  for (const { unit, repeat } of figuresFor(sized, scale, to - from)) {
    const { along, reach } = sizeOf(unit);
    if ((to - from - along) / 2 > Math.max(BARE_BESIDE, reach)) continue;
    const laid = laidAlone(question, unit, scale, repeat);
    if (laid) return fitOf(question, laid, scale, along);
  }
  return null;
}

/** Figures for so much room, the best first, and the repeat that each was built for. */
function* figuresFor(
  { repeat: wanted, glide, build }: Sized,
  scale: number,
  room: number,
): Generator<{ unit: Unit; repeat: number }> {
  const shortest = SHORTEST_SHARE * wanted * scale;
  for (const repeat of [wanted * scale, shortest])
    for (const unit of figuresAlone(build(scale, repeat), glide, room)) yield { unit, repeat };
  for (const unit of slimFigures(build(scale, shortest), glide, room)) yield { unit, repeat: shortest };
}

/** The figure in the middle of its span; null where the ends of that would cut it. */
function laidAlone(question: SpanQuestion, unit: Unit, scale: number, repeat: number): Laid | null {
  const { guide, span, rows, offset, band } = question;
  const from = span.start.at + span.start.setback;
  const to = span.end.at - span.end.setback;
  const runs = [{ unit, count: 1, from: (from + to - sizeOf(unit).along) / 2, length: unit.length }];
  const reach = shifted(wholeReach(rows, scale, repeat), offset);
  const laying: Laying = {
    guide,
    parts: partsOf(question, [{ from }], [to - from], [2], reach),
    band,
    built: reach,
    closed: false,
    offset,
  };
  const alone = { ...rows, followers: [], accents: [] };
  const lay = (cuts: Cuts) => layRows(alone, laying, runs, scale, false, cuts);
  const laid = lay(cutsOf(question));
  return isWhole(laid, lay(NO_CUTS)) && !isDrawnIn(laid, unit) && !losesAny(question, laid) ? laid : null;
}

function fitOf(question: SpanQuestion, laid: Laid, scale: number, length: number): SpanFit {
  const { seam, span, rows } = question;
  const from = span.start.at + span.start.setback;
  const to = span.end.at - span.end.setback;
  const none = { repeats: 0, along: 0 };
  const title = rows.sized.stitch.title.toLowerCase();
  return {
    laid: {
      ...laid,
      rows: [...laid.rows, ...rows.followers.map(() => none)],
      accents: rows.accents.map(() => ({ asked: 0, leftOut: [] })),
    },
    stretches: [{ from, to, repeats: rows.sized.glide ? 0.5 : 1, ends: endsOf(span, 0, 1), single: true }],
    gaps: gapsOf(question, (to - from - length) / 2),
    scale,
    findings: [
      {
        level: 'note',
        code: 'single-figure',
        message:
          `${lineName(seam)}: one single figure of ${title} stands in the middle of ${(to - from).toFixed(1)} mm, where no ` +
          'whole repeat fits; a stitch with a shorter repeat would fill them',
        seam,
        at: question.middle(span),
      },
    ],
  };
}

/** Whether nothing of what is laid was cut off. */
function isWhole(laid: Laid, uncut: Laid): boolean {
  const chains = ({ layers }: Laid): Chain[] => layers.flatMap((layer) => layer.chains);
  const [own, all] = [chains(laid), chains(uncut)];
  return (
    own.length === all.length &&
    own.every(
      ({ path }, i) =>
        path.length === all[i].path.length && path.every((v, k) => Math.abs(v - all[i].path[k]) < 1e-6),
    )
  );
}

/** Whether the point of a wedge leaves no more than a lump of a figure. */
function isDrawnIn({ layers }: Laid, { legs }: Unit): boolean {
  const chains = layers.flatMap((layer) => layer.chains);
  const shown = chains.reduce(
    (sum, { kind, path, pathStart }) =>
      kind.reduce(
        (own, one, leg) => own + (one === 'under' ? 0 : lengthOf(path, pathStart[leg], pathStart[leg + 1])),
        sum,
      ),
    0,
  );
  const whole = legs.reduce(
    (sum, { kind, path }) => sum + (kind === 'under' ? 0 : lengthOf(path, 0, path.length / 2)),
    0,
  );
  return shown < LEAST_SHOWN * whole;
}
