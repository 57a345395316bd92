import { lineName } from '../finding.js';
import type { Unit, UnitLeg } from '../stitches/stitch.js';
import { shifted } from './band.js';
import type { Chain } from './fit.js';
import { cutsOf, endsOf, gapsOf, partsOf, type SpanFit, type SpanQuestion } from './fit-span.js';
import type { Laying } from './lay.js';
import { type Cuts, type Laid, layRows } from './lay-rows.js';
import { wholeReach } from './rows.js';

/** A figure reaches across its line at least so far, mm; what lies on the line is what a plain line gives as well. */
const LEAST_ACROSS = 0.5;
const NO_CUTS: Cuts = { thread: [], figures: [], within: null };

/**
 * Where not even one repeat fits, one figure of the first row in the middle, at the stitch's smallest good size: of
 * stitches none of whose visible thread runs on into the next repeat. Null where it has none, or where that would reach
 * past the ends of the span or be cut there.
 */
export function singleFigure(question: SpanQuestion): SpanFit | null {
  const { seam, guide, span, rows, offset, band } = question;
  if (span.ring || span.corners.length > 0 || rows.laid > 0) return null;
  const { sized } = rows;
  const scale = Math.min(sized.least, question.scale);
  const repeat = sized.repeat * scale;
  const unit = figureOf(sized.build(scale, repeat));
  if (!unit) return null;
  const [first, last] = extentAlong(unit);
  const from = span.start.at + span.start.setback;
  const to = span.end.at - span.end.setback;
  if (to - from < last - first) return null;
  const runs = [{ unit, count: 1, from: (from + to - first - last) / 2, length: unit.length }];
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
  if (!isWhole(laid, lay(NO_CUTS))) return null;
  const none = { repeats: 0, along: 0 };
  const title = sized.stitch.title.toLowerCase();
  return {
    laid: {
      ...laid,
      rows: [...laid.rows, ...rows.followers.map(() => none)],
      accents: rows.accents.map(() => ({ asked: 0, leftOut: [] })),
    },
    stretches: [{ from, to, repeats: sized.glide ? 0.5 : 1, ends: endsOf(span, 0, 1), single: true }],
    gaps: gapsOf(question, (to - from - (last - first)) / 2),
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

/** What of a unit is seen, if it is a figure that stands by itself. */
function figureOf(unit: Unit): Unit | null {
  const legs = unit.legs.filter(({ kind }) => kind !== 'under');
  const ends = new Set(legs.flatMap(({ from, to }) => [from, to]));
  const runsOn = unit.joins.some(([a, b]) => ends.has(a) && ends.has(b));
  const isRaised = legs.some(({ kind }) => kind === 'knot');
  const across = Math.max(unit.reach.left, unit.reach.right);
  if (runsOn || unit.ending.length > 0 || legs.length === 0 || (across < LEAST_ACROSS && !isRaised))
    return null;
  return { ...unit, legs, joins: [], closing: [] };
}

/** Where a figure begins and ends along its line, its knots and satin in all their width. */
function extentAlong({ legs }: Unit): [number, number] {
  let [first, last] = [Infinity, -Infinity];
  for (const leg of legs) {
    for (const u of alongOf(leg)) {
      first = Math.min(first, u - leg.size / 2);
      last = Math.max(last, u + leg.size / 2);
    }
  }
  return [first, last];
}

const alongOf = ({ path }: UnitLeg): Float64Array => path.filter((_, i) => i % 2 === 0);

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
