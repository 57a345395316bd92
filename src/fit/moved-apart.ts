import Flatbush from 'flatbush';
import type { Box } from '../geometry/box.js';
import { nearer } from '../geometry/nearer.js';
import type { Points } from '../geometry/polyline.js';
import type { Memory } from './memory.js';
import type { Span, SpanEnd } from './spans.js';

/** A dressed line before its thread is laid. */
export interface Claimant {
  /** what all the rest is worked out from */
  readonly line: object;
  readonly spans: readonly Span[];
  /** the cloth that its spans claim as they are, and the boxes around it */
  readonly claims: readonly { readonly points: Points; readonly box: Box }[];
  /** the cloth that a span of it would claim */
  readonly claim: (span: Span) => readonly Points[];
  /** whether it gives way where it comes too near to that line, number in the list of all */
  readonly yieldsTo: (other: number) => boolean;
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
 */
export function movedApart(lines: readonly Claimant[], gap: number, memory: Memory): (readonly Span[])[] {
  const claims = lines.flatMap(({ claims }, line) =>
    claims.map(({ points, box }) => ({ line, points, box })),
  );
  if (claims.length < 2) return lines.map(({ spans }) => spans);
  const index = new Flatbush(claims.length);
  for (const { box } of claims) index.add(box.left, box.top, box.right, box.bottom);
  index.finish();
  return lines.map(({ line, spans, claims: all, claim, yieldsTo }, l) => {
    const near = new Set<number>();
    for (const { box } of all) {
      const { left, top, right, bottom } = box;
      for (const k of index.search(left - gap, top - gap, right + gap, bottom + gap)) {
        if (claims[k].line !== l && yieldsTo(claims[k].line)) near.add(k);
      }
    }
    const others = [...near].sort((a, b) => a - b).map((k) => claims[k].points);
    if (others.length === 0) return spans;
    return memory.of('moved apart', l, [line, spans, ...others], () =>
      spans.map((span) => movedFrom(span, claim, others, gap - SLACK)),
    );
  });
}

function movedFrom(
  span: Span,
  claim: (span: Span) => readonly Points[],
  others: readonly Points[],
  least: number,
): Span {
  let moved = span;
  for (const own of claim(span)) {
    for (const other of others) if (nearer(own, other, least)) moved = clearOf(moved, claim, other, least);
  }
  return moved;
}

/** A span with the end that lies next to a claim moved outward until all of the span is clear of it. */
function clearOf(span: Span, claim: (span: Span) => readonly Points[], other: Points, least: number): Span {
  const tooNear = (one: Span) => claim(one).some((points) => nearer(points, other, least));
  const room = span.end.at - span.end.setback - span.start.at - span.start.setback;
  const withSetback = (end: SpanEnd, by: number): SpanEnd => ({ ...end, setback: end.setback + by });
  for (let by = 0; by < room; by += STEP) {
    // Whichever end it takes less to move is the one beside the other line.
    const start = { ...span, start: withSetback(span.start, by) };
    if (!tooNear(start)) return start;
    const end = { ...span, end: withSetback(span.end, by) };
    if (!tooNear(end)) return end;
  }
  return { ...span, start: withSetback(span.start, room) };
}
