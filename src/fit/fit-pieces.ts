import type { Corner } from '../geometry/guide-line.js';
import { reachAt } from './band.js';
import { countSteps } from './count-steps.js';
import { fitSpan, type SpanFit, type SpanQuestion } from './fit-span.js';
import { fitOnWaves } from './on-waves.js';
import { singleFigure } from './single-figure.js';
import { stretchLengths, takesWhole } from './span-counts.js';
import { cornerEnd, type Span } from './spans.js';

/** What a piece of a span got. */
export interface PieceFit extends SpanFit {
  readonly piece: Span;
}

/**
 * A span fitted in one go; where a side between two corners is too short for even one small repeat, the treatment is
 * broken at that side's corners instead of turning them, so that the other sides are dressed all the same.
 */
export function fitInPieces(question: SpanQuestion, gap: number): PieceFit[] {
  const { span } = question;
  const fitOne = (one: SpanQuestion): SpanFit => {
    const fit = one.rows.waves ? fitOnWaves(one, gap) : fitSpan(one);
    return fit.laid || fit.findings.length === 0 ? fit : (singleFigure(one) ?? fit);
  };
  const whole = fitOne(question);
  const corners = cornersOf(question);
  if (whole.laid || corners.length === 0) return [{ ...whole, piece: span }];
  return piecesOf(question, corners, gap).map((piece) => ({
    ...fitOne({ ...question, span: piece }),
    piece,
  }));

  function cornersOf({ guide }: SpanQuestion): readonly Corner[] {
    const start = span.ring ? guide.corners.filter((corner) => corner.u === 0) : [];
    return [...start, ...span.corners];
  }
}

function piecesOf(question: SpanQuestion, corners: readonly Corner[], gap: number): Span[] {
  const { span } = question;
  const { sized } = question.rows;
  const least = sized.repeat * Math.min(sized.least, question.scale);
  const lengths = stretchLengths(span, { start: 0, end: 0 });
  const { own } = countSteps(question.rows);
  const short = lengths.map((length) => !takesWhole(length, least, own));
  const isBreak = (k: number) => short.every((is) => !is) || short[k] || short[k + 1];
  // On a ring the first corner is where the line starts, and every ring in pieces is broken there.
  const inner = span.ring ? corners.filter((corner) => corner.u > 0) : corners;
  const broken = inner.filter((_, k) => isBreak(k));
  const end = (corner: Corner) => cornerEnd(reachAt(question.band, corner.u), corner, gap);
  const ring = span.ring && corners[0]?.u === 0 ? end(corners[0]) : null;
  const first = ring ?? span.start;
  const last = ring ? { ...ring, at: span.end.at } : span.end;
  const starts = first.at + first.setback;
  const ends = last.at - last.setback;
  // What an end is set back by may reach past the nearest corner.
  const bounds = [
    first,
    ...broken.flatMap((corner) => {
      const { setback } = end(corner);
      return [
        { ...end(corner), setback: Math.max(setback, corner.u - ends) },
        { ...end(corner), setback: Math.max(setback, starts - corner.u) },
      ];
    }),
    last,
  ];
  return Array.from({ length: bounds.length / 2 }, (_, i): Span => {
    const [start, stop] = [bounds[2 * i], bounds[2 * i + 1]];
    return {
      start,
      end: stop,
      corners: inner.filter(({ u }) => u > start.at + 1e-6 && u < stop.at - 1e-6),
      ring: false,
    };
  });
}
