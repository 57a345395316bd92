import type { SeamMap } from '../block/seam-map.js';
import type { FitRules } from './ask.js';
import { claimedCloth } from './band-polygon.js';
import type { Bound, Cut } from './cloth.js';
import { fitInPieces, type PieceFit } from './fit-pieces.js';
import { type Line, type Lines, mannerOf } from './lines.js';
import { isEverShort } from './manner.js';
import { onClaim } from './on-claim.js';
import type { Span } from './spans.js';
import { placeAt } from './walk.js';

/** A span and what it got, in one piece or several. */
export interface FittedSpan {
  readonly span: Span;
  readonly parts: readonly PieceFit[];
}

export const partsOf = (pieces: readonly FittedSpan[]): PieceFit[] => pieces.flatMap(({ parts }) => parts);

/** What all spans of a line get. */
export function piecesOf(
  { junctions }: SeamMap,
  { ask, walk, band, rows, scale }: Line,
  spans: readonly Span[],
  { gap }: FitRules,
  cut: (bound: Bound) => Cut,
): FittedSpan[] {
  const { guide } = walk;
  const within = isEverShort(ask.manner)
    ? onClaim(spans.flatMap((span) => claimedCloth({ guide, band, span, worked: null }, cut)))
    : null;
  const offset = walk.reverse ? -ask.offset : ask.offset;
  const middle = ({ start, end }: Span) => placeAt(walk, (start.at + end.at) / 2);
  const shared = { seam: ask.seam, guide, band, rows, scale, offset, cut, within, middle };
  return spans.map((span) => {
    const bulk = [span.start, span.end].flatMap(({ junction }) =>
      junction < 0 || junctions[junction].onOutline ? [] : junctions[junction].at,
    );
    return { span, parts: fitInPieces({ ...shared, span, bulk }, gap) };
  });
}

/** The lines under which a line tucks its ends. */
export function throughLines(
  map: SeamMap,
  lines: Lines,
  line: Line,
  spans: readonly Span[],
): (number | 'outline')[] {
  const under = new Set<number | 'outline'>();
  for (const { junction, at } of spans.flatMap((span) => [span.start, span.end])) {
    if (junction < 0 || mannerOf(line, at) !== 'tuck') continue;
    const joint = map.junctions[junction];
    const through = joint.onOutline ? 'outline' : joint.through;
    if (through === null || through === line.ask.seam || line.ask.shortOf.has(through)) continue;
    if (lines.has(through)) under.add(through);
  }
  return [...under];
}
