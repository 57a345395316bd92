import { boxesMeet, boxOf } from '../geometry/box.js';
import { nearer } from '../geometry/nearer.js';
import type { Points } from '../geometry/polyline.js';
import { type Answers, either, type Memory, withLinked } from './memory.js';
import { grown, nearLines } from './near-lines.js';
import { isSame } from './same.js';
import type { Span, SpanEnd } from './spans.js';

/** A dressed line before its thread is laid. */
export interface Claimant {
  readonly spans: readonly Span[];
  /** the cloth that its spans claim as they are */
  readonly claims: readonly Points[];
  /** the cloth that a span of it would claim */
  readonly claim: (span: Span) => readonly Points[];
  /** whether an end of it may be moved outward: it stops short there */
  readonly gives: (end: SpanEnd) => boolean;
}

/** Ends move outward in steps of this, mm. */
const STEP = 0.2;
/** What rounding may take from a gap, mm. */
const SLACK = 0.02;

/**
 * Spans of all lines, with ends moved outward where a line that gives way comes nearer than the gap to what another
 * claims: bands beside curves, and bands that reach beyond the end of a third line between them. Formulas for straight
 * arms have set all other ends, so few move. A line moves clear of what the others claimed at first, so that its answer
 * depends on them alone. Cost: n log n in the claims, and for each pair too near a few times the points of both.
 *
 * @param yieldsTo whether a line, by its number, gives way where it comes too near to another
 */
export function movedApart(
  lines: Answers<Claimant>,
  yieldsTo: (one: number, other: number) => boolean,
  gap: number,
  memory: Memory,
): Answers<readonly Span[]> {
  const near = nearLines('near claims', lines, ({ claims }) => grown(boxOf(claims), gap / 2), memory);
  const stale = withLinked(either(lines.changed, near.changed), near.of);
  return memory.each('moved apart', lines.of.length, stale, (l, last: readonly Span[] | undefined) => {
    const { spans, claims, claim, gives } = lines.of[l];
    const others = near.of[l]
      .filter((other) => yieldsTo(l, other))
      .flatMap((other) => lines.of[other].claims);
    if (others.length === 0) return spans;
    const boxes = claims.map((points) => grown(boxOf([points]), gap));
    const close = others.filter((other) => {
      const box = boxOf([other]);
      return boxes.some((own) => boxesMeet(own, box));
    });
    if (close.length === 0) return spans;
    const moved = spans.map((span) => movedFrom(span, { claim, gives }, close, gap - SLACK));
    return last && isSame(moved, last) ? last : moved;
  });
}

function movedFrom(
  span: Span,
  line: Pick<Claimant, 'claim' | 'gives'>,
  others: readonly Points[],
  least: number,
): Span {
  let moved = span;
  for (const own of line.claim(span)) {
    for (const other of others) if (nearer(own, other, least)) moved = clearOf(moved, line, other, least);
  }
  return moved;
}

/**
 * A span with the end that lies next to a claim moved outward until all of the span is clear of it; as it is when that
 * end does not stop short.
 */
function clearOf(
  span: Span,
  { claim, gives }: Pick<Claimant, 'claim' | 'gives'>,
  other: Points,
  least: number,
): Span {
  const tooNear = (one: Span) => claim(one).some((points) => nearer(points, other, least));
  const room = span.end.at - span.end.setback - span.start.at - span.start.setback;
  const withSetback = (end: SpanEnd, by: number): SpanEnd => ({ ...end, setback: end.setback + by });
  for (let by = 0; by < room; by += STEP) {
    // Whichever end it takes less to move is the one beside the other line.
    const start = { ...span, start: withSetback(span.start, by) };
    if (!tooNear(start)) return gives(span.start) ? start : span;
    const end = { ...span, end: withSetback(span.end, by) };
    if (!tooNear(end)) return gives(span.end) ? end : span;
  }
  return gives(span.start) && gives(span.end) ? { ...span, start: withSetback(span.start, room) } : span;
}
