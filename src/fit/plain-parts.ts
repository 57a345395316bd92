import type { SeamMap } from '../block/seam-map.js';
import { type Finding, lineName } from '../finding.js';
import { frameFinder } from '../geometry/guide-frame.js';
import type { FitRules } from './ask.js';
import { evenBand, type Reach } from './band.js';
import type { Claim } from './band-polygon.js';
import { bareCorners } from './bare-corners.js';
import type { Chain, Layer, Stretch } from './fit.js';
import type { PieceFit } from './fit-pieces.js';
import { endRules, type Line, type Lines, mannerOf } from './lines.js';
import { joined, type Part, SHORTEST_LINE } from './plain-line.js';
import { wholeOverhang } from './rows.js';
import { plainEnd, type SpanEnd, spansOf } from './spans.js';
import type { Walk } from './walk.js';

/** A bare stretch longer than this is filled with a plain line, mm. Common practice. */
export const PLAIN_OVER = 3;

/** Whether repeats fill all of a line that they are asked for. */
export const isWhole = (line: Line, pieces: readonly PieceFit[]): boolean =>
  pieces.every(({ laid }) => laid !== null) &&
  tightParts(line).length === 0 &&
  atCorners(line, pieces).length === 0;

/** What stays bare at sharp corners. */
const atCorners = (line: Line, pieces: readonly PieceFit[]): Part[] =>
  joined([...beforeCorners(line, pieces), ...bareCorners(line, pieces, PLAIN_OVER)]);

/** What stays bare before and behind the corners that the treatment breaks at: its two sides keep clear of each other. */
function beforeCorners(line: Line, pieces: readonly PieceFit[]): Part[] {
  const { rows } = line;
  const laid = pieces.filter(({ stretches }) => stretches.length > 0);
  const parts = laid.flatMap(({ piece: { start, end }, stretches, scale }): Part[] => {
    const [first, last] = [stretches[0], stretches[stretches.length - 1]];
    const past = ({ from, to, repeats, single }: Stretch) =>
      single ? { start: 0, end: 0 } : wholeOverhang(rows, scale, (to - from) / repeats);
    const before = first.from - past(first).start;
    const behind = last.to + past(last).end;
    return [
      ...(isBroken(line, start) ? [{ from: start.at, to: before }] : []),
      ...(isBroken(line, end) ? [{ from: behind, to: end.at }] : []),
    ];
  });
  return joined(parts.filter(({ from, to }) => to > from));
}

/** Where ends stop short, others may have claimed the cloth in the point. */
const isBroken = (line: Line, { kind, setback, at }: SpanEnd): boolean =>
  kind === 'corner' && setback > 0 && mannerOf(line, at) !== 'short';

const tightParts = ({ tight }: Line) => tight.filter(({ from, to, kept }) => kept === null && to > from);

/**
 * Where a line got nothing, because not even one small repeat fits there, it would be pressed too much, or the treatment
 * leaves a corner bare: what a plain line, which goes round every corner, can fill.
 */
export function plainParts(
  map: SeamMap,
  lines: Lines,
  line: Line,
  rules: FitRules,
  pieces: readonly PieceFit[],
): Part[] {
  const empty = pieces.filter(({ laid }) => laid === null).map(({ piece }) => piece);
  const tight = tightParts(line);
  const corners = atCorners(line, pieces);
  if (empty.length === 0 && tight.length === 0 && corners.length === 0) return [];
  const whole = empty.map((span) => ({ from: span.start.at, to: span.end.at }));
  const parts = joined([...whole, ...tight, ...corners]).filter(({ from, to }) => to - from > PLAIN_OVER);
  return onThinLine(map, lines, line, rules, parts);
}

/**
 * What of some parts of a line is left to one without breadth, which ends where the bands of others leave it room; none of it
 * too short for a line.
 */
export function onThinLine(
  map: SeamMap,
  lines: Lines,
  line: Line,
  rules: FitRules,
  parts: readonly Part[],
): Part[] {
  const across = line.walk.reverse ? -line.ask.offset : line.ask.offset;
  const own = thinReach(across);
  const wide = endRules(map, lines, line, rules);
  const thin = spansOf(line.walk, {
    ...wide,
    reach: (arm) =>
      arm.seam === line.ask.seam ? seenFrom(own, arm.sense, line.walk.reverse) : wide.reach(arm),
    ownAt: () => own,
    tight: [],
    breaksAt: () => false,
    linked: () => false,
  });
  const all = joined(parts);
  return thin.flatMap(({ start, end }) => {
    const [first, last] = [start.at + Math.max(0, start.setback), end.at - Math.max(0, end.setback)];
    return all
      .map(({ from, to }) => ({ from: Math.max(first, from), to: Math.min(last, to) }))
      .filter(({ from, to }) => to - from >= SHORTEST_LINE);
  });
}

/** A thread to either side, mm: the passes of a plain line lie side by side. */
const BREADTH = 0.2;

/** Reach of a plain line to both hands of the walk, seen from the seam, that lies so far to the left of it. */
const thinReach = (across: number): Reach => ({
  left: BREADTH + Math.max(0, across),
  right: BREADTH + Math.max(0, -across),
});

/** The cloth that a plain line claims. */
export function plainClaim({ guide }: Walk, across: number, { from, to }: Part): Claim {
  const corners = guide.corners.filter(({ u }) => u > from + 1e-6 && u < to - 1e-6);
  const span = { start: plainEnd('corner', from), end: plainEnd('corner', to), corners, ring: false };
  return { guide, band: evenBand(guide, thinReach(across)), span, worked: null };
}

/** The plain lines are sewn with the first row. */
export function withPlain(layers: readonly Layer[], chains: readonly Chain[]): readonly Layer[] {
  if (chains.length === 0) return layers;
  const isFirst = ({ kind, index, thread }: Layer) => kind === 'row' && index === 0 && thread === 0;
  const first = layers.find(isFirst) ?? { kind: 'row', index: 0, thread: 0, chains: [] };
  const whole = { ...first, chains: [...first.chains, ...chains] };
  return layers.some(isFirst) ? layers.map((layer) => (layer === first ? whole : layer)) : [whole, ...layers];
}

const seenFrom = (reach: Reach, sense: 1 | -1, reverse: boolean): Reach =>
  (sense === 1) !== reverse ? reach : { left: reach.right, right: reach.left };

export function plainFinding({ ask, walk }: Line, plain: readonly Part[]): Finding[] {
  if (plain.length === 0) return [];
  const finder = frameFinder(walk.guide, 0, walk.guide.u.length - 1);
  finder.at((plain[0].from + plain[0].to) / 2);
  const long = plain.reduce((sum, { from, to }) => sum + to - from, 0);
  return [
    {
      level: 'note',
      code: 'plain-line',
      message:
        `${lineName(ask.seam)}: a plain line fills ${long.toFixed(1)} mm where no repeat of ` +
        `${ask.sized.stitch.title.toLowerCase()} fits`,
      seam: ask.seam,
      at: [finder.frame[0], finder.frame[1]],
    },
  ];
}
