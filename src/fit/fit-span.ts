import { OVERSHOOT } from '../block/loose-ends.js';
import { type Finding, lineName } from '../finding.js';
import { sampleBefore } from '../geometry/guide-frame.js';
import type { GuideLine } from '../geometry/guide-line.js';
import { settledRuns } from './about-bends.js';
import { type Band, type Reach, shifted } from './band.js';
import type { Bound, Cut, IsOnCloth } from './cloth.js';
import type { Stretch } from './fit.js';
import type { Part, Point } from './lay.js';
import { type Cuts, type Laid, layRows } from './lay-rows.js';
import { isLost } from './lost.js';
import { cornerMitre, leanMitre, withMetMitres } from './mitre.js';
import { type Rows, wholeReach } from './rows.js';
import { type Choice, chooseCounts, runsOf } from './span-counts.js';
import type { Span, SpanEnd } from './spans.js';

export interface SpanFit {
  /** null when nothing fits */
  readonly laid: Laid | null;
  readonly stretches: readonly Stretch[];
  /** from the line's own ends to where the first and last repeats begin and end, overhang included */
  readonly gaps: readonly [number, number];
  readonly scale: number;
  readonly findings: readonly Finding[];
}

export interface SpanQuestion {
  readonly seam: number | 'outline';
  readonly guide: GuideLine;
  readonly span: Span;
  readonly band: Band;
  readonly rows: Rows;
  /** factor the junctions have already asked for */
  readonly scale: number;
  readonly offset: number;
  /** makes the cut of an end */
  readonly cut: (bound: Bound) => Cut;
  /** the cloth that the treatment claims, where it stops short of others and must not leave that */
  readonly within: IsOnCloth | null;
  /** junctions at the ends of the span, on whose bulk nothing thick is sewn: x y x y ... */
  readonly bulk: readonly number[];
  /** where a finding about a span points */
  readonly middle: (span: Span) => readonly [number, number];
}

/** Whole repeats on one span: counts, sizes, corners and ends, laid on the cloth. */
export function fitSpan(question: SpanQuestion): SpanFit {
  const { seam, span } = question;
  const { sized } = question.rows;
  const choice = chooseCounts(question);
  const fit = choice && layChoice(question, choice);
  if (!fit || isLost(question, fit.laid)) {
    const nothing = { laid: null, stretches: [], gaps: [0, 0] as const, scale: 0 };
    // The block's own findings say what such a stub is.
    if (isStub(span)) return { ...nothing, findings: [] };
    const room = span.end.at - span.end.setback - span.start.at - span.start.setback;
    const finding: Finding = {
      level: 'warning',
      code: 'too-short',
      message:
        `${lineName(seam)}: ${room > 0 ? `the ${room.toFixed(1)} mm between its ends are too short` : 'between its ends there is no room'} for ` +
        `${sized.stitch.title.toLowerCase()}; a smaller repeat, a narrower stitch or ends that tuck would fit`,
      seam,
      at: question.middle(span),
    };
    return { ...nothing, findings: [finding] };
  }
  return fit;
}

const isStub = ({ start, end }: Span): boolean =>
  end.at - start.at <= OVERSHOOT && (start.kind === 'free' || end.kind === 'free');

function layChoice(question: SpanQuestion, choice: Choice): SpanFit & { readonly laid: Laid } {
  const { guide, span, rows } = question;
  const { scale, lengths, halfRepeats, margin } = choice;
  const reach = wholeReach(rows, scale, (2 * lengths[0]) / halfRepeats[0]);
  const runs = runsOf(question, choice);
  const laying = {
    guide,
    parts: partsOf(question, runs, lengths, halfRepeats, shifted(reach, question.offset)),
    band: question.band,
    built: shifted(reach, question.offset),
    closed: span.ring,
    offset: question.offset,
  };
  const stretches = runs.map(
    (run, i): Stretch => ({
      from: run.from,
      to: run.from + lengths[i],
      repeats: halfRepeats[i] / 2,
      ends: endsOf(span, i, runs.length),
    }),
  );
  return {
    laid: layRows(
      rows,
      laying,
      settledRuns({ guide, ring: span.ring, rows, scale, reach }, runs),
      scale,
      span.ring,
      cutsOf(question),
    ),
    stretches,
    gaps: gapsOf(question, margin),
    scale,
    findings: sizeFindings(question, choice),
  };
}

/** What the thread of a span must stay beside at its ends. */
export function cutsOf({ span, cut, within }: SpanQuestion): Cuts {
  const ends = span.ring ? [] : [span.start, span.end];
  const thread = ends.flatMap(({ bound }) => (bound ? [cut(bound)] : []));
  const figures = ends.flatMap(({ figureBound }) => (figureBound ? [cut(figureBound)] : []));
  return { thread, figures: [...thread, ...figures], within };
}

/** What is at both ends of a stretch, one of `count` between the corners of a span. */
export function endsOf(span: Span, i: number, count: number): Stretch['ends'] {
  if (span.ring && count === 1) return ['ring', 'ring'];
  return [
    i === 0 && !span.ring ? span.start.kind : 'corner',
    i === count - 1 && !span.ring ? span.end.kind : 'corner',
  ];
}

/** From the line's own ends to where repeats begin and end, with so much left bare at both. */
export function gapsOf({ guide, span: { start, end } }: SpanQuestion, margin: number): [number, number] {
  return [start.at + start.setback + margin, guide.length - end.at + end.setback + margin];
}

/** The parts of a line between its corners, over which repeats begin at `from` and fill so much of it. */
export function partsOf(
  question: SpanQuestion,
  runs: readonly { readonly from: number }[],
  lengths: readonly number[],
  halfRepeats: readonly number[],
  reach: Reach,
): Part[] {
  const { guide, span } = question;
  const us = guide.u;
  const doubled = (u: number) => {
    const k = sampleBefore(us, u + 1e-6) - 1;
    return k >= 0 && us[k] === us[k + 1] && us[k] > u - 1e-6 ? k : -1;
  };
  const { corners } = span;
  const splits = corners.map((corner) => doubled(corner.u));
  const startCorner = span.ring ? guide.corners.find((corner) => corner.u === 0) : undefined;
  const parts = runs.map((run, i): Part => {
    const repeat = (2 * lengths[i]) / halfRepeats[i];
    const cornerBefore = i > 0 ? corners[i - 1] : startCorner;
    const cornerAfter = i < corners.length ? corners[i] : startCorner;
    return {
      from: run.from,
      to: run.from + lengths[i],
      first: i > 0 ? splits[i - 1] + 1 : firstSample(span, doubled),
      last: i < splits.length ? splits[i] : lastSample(us, span, doubled),
      start: cornerBefore
        ? cornerMitre(cornerBefore.turn, reach, repeat, lengths[i])
        : leanMitre(span.start, reach, repeat, lengths[i]),
      end: cornerAfter
        ? cornerMitre(cornerAfter.turn, reach, repeat, lengths[i])
        : leanMitre(span.end, reach, repeat, lengths[i]),
      startPoint: i === 0 ? pointOf(span.start) : null,
      endPoint: i === runs.length - 1 ? pointOf(span.end) : null,
    };
  });
  return withMetMitres(parts, span.ring);
}

const pointOf = (end: SpanEnd): Point | null => end.taper && { at: end.at, ...end.taper };

/** A span that starts at a corner it breaks at begins on that corner's second sample. */
function firstSample(span: Span, doubled: (u: number) => number): number {
  const k = span.start.kind === 'corner' ? doubled(span.start.at) : -1;
  return k >= 0 ? k + 1 : 0;
}

function lastSample(us: Float64Array, span: Span, doubled: (u: number) => number): number {
  const k = span.end.kind === 'corner' ? doubled(span.end.at) : -1;
  return k >= 0 ? k : us.length - 1;
}

/** Notes on what had to be made smaller, or left bare at the ends. */
export function sizeFindings(
  question: SpanQuestion,
  choice: { readonly scale: number; readonly margin: number },
): Finding[] {
  const { seam } = question;
  const { sized } = question.rows;
  const at = question.middle(question.span);
  const findings: Finding[] = [];
  if (choice.scale < question.scale - 1e-9) {
    findings.push({
      level: 'note',
      code: 'smaller-size',
      message:
        `${lineName(seam)}: ${sized.stitch.title.toLowerCase()} is worked at ${Math.round(choice.scale * 100)} % ` +
        'of the size asked for, so that whole repeats fit; a shorter repeat would keep its width',
      seam,
      at,
    });
  }
  if (choice.margin > 0) {
    findings.push({
      level: 'note',
      code: 'margins',
      message:
        `${lineName(seam)}: ${choice.margin.toFixed(1)} mm stay bare at both ends, because no whole number of ` +
        'repeats fills the seam; another repeat length would',
      seam,
      at,
    });
  }
  return findings;
}
