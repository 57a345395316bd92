import type { SeamMap } from '../block/seam-map.js';
import { frameFinder } from '../geometry/guide-frame.js';
import { nearestOnSegment } from '../geometry/nearest.js';
import type { FitRules } from './ask.js';
import { COVERED, exactBareRuns, ledOn, longest, type Run, STEP } from './bare-run.js';
import type { Chain, SeamFit } from './fit.js';
import { type Line, type Lines, mannerOf } from './lines.js';
import type { Part } from './plain-line.js';
import { onThinLine, PLAIN_OVER } from './plain-parts.js';
import { wholeReach } from './rows.js';
import type { Span } from './spans.js';
import { threadSeen } from './thread-seen.js';

/** So far from a junction a line is looked at, mm, beside two of its repeats: no stitch leaves more to a slant. */
const LOOKED = 12;

/** Whoever looks at a seam in steps of half a millimeter finds no more than PLAIN_OVER bare. */
const OVER = PLAIN_OVER - 0.5;
/** What is no longer than this is the same length, mm: a line and its mirror image are measured alike. */
const HAIR = 0.01;

/** A dressed line, and what came of it. */
export interface Sewn {
  readonly line: Line;
  readonly spans: readonly Span[];
  readonly fit: SeamFit;
  /** before figures were left out on the bulk of junctions or under other thread */
  readonly whole: SeamFit;
}

/**
 * What is bare beside the junctions of a dressed line, over more than 3 mm and more than the stitch leaves between its
 * repeats: further from any thread, its own or that of lines it meets, than its rows reach. Figures that would fall off a
 * slanting edge leave such stretches, and thick ones on the bulk of a junction. A plain line can fill them. Ends that were
 * asked to stop short stay as they are. Linear in the legs of lines that may have such stretches, else in needle points.
 *
 * @param met what is sewn along the lines that it meets
 */
export function bareAtJunctions(
  map: SeamMap,
  lines: Lines,
  { line, spans, fit, whole }: Sewn,
  rules: FitRules,
  met: () => readonly Chain[],
): Part[] {
  const { walk, rows, ask } = line;
  if (fit.scale === null) return [];
  const { guide } = walk;
  const finder = frameFinder(guide, 0, guide.u.length - 1);
  const at = (u: number): readonly [number, number] => {
    finder.at(u);
    return [finder.frame[0], finder.frame[1]];
  };
  const { left, right } = wholeReach({ ...rows, accents: [] }, fit.scale, ask.sized.repeat * fit.scale);
  const reach = Math.max(left, right);
  const own = rowsIn(fit);
  const looked = LOOKED + 2 * ask.sized.repeat;

  /** what is bare from one u to another, seen from a junction at one of them or between */
  const bareAbout = (junction: number, first: number, last: number): Part[] => {
    const around = { at: at(junction), within: looked + reach };
    const ownThread = threadSeen(own, { around, behind: true });
    const runs = exactBareRuns(ownThread, at, first, last, reach);
    const open = runs.find(({ from, to }) => from <= junction && to >= junction) ?? beside(runs, junction);
    if (!open) return [];
    const usual = longest(runs.filter((run) => run !== open));
    const thread = threadSeen([...own, ...met()], { around, behind: true });
    const bare = longest(exactBareRuns(thread, at, open.from, open.to, reach));
    if (bare <= Math.max(OVER, usual) + HAIR) return [];
    const further = reach + COVERED;
    const from = open.from > first ? ledOn(ownThread, at, open.from, -1, first, further) : open.from;
    const to = open.to < last ? ledOn(ownThread, at, open.to, 1, last, further) : open.to;
    return [{ from, to }];
  };
  const atEnd = (span: Span, which: 'start' | 'end'): Part[] => {
    const { kind, at: end } = span[which];
    if (kind === 'corner' || kind === 'ring' || mannerOf(line, end) === 'short') return [];
    const sense = which === 'start' ? 1 : -1;
    const room = span.end.at - span.start.at;
    const near = at(end + sense * Math.min(room, OVER));
    if (isNear(own, near, reach, sense)) return [];
    const inner = end + sense * Math.min(looked, room);
    return bareAbout(end, Math.min(end, inner), Math.max(end, inner));
  };
  const ends = spans.flatMap((span) => (span.ring ? [] : [...atEnd(span, 'start'), ...atEnd(span, 'end')]));
  // on its way over a junction nothing is missing but what was left out
  const passed = fit === whole ? [] : walk.crossings.map(({ u }) => u);
  const onWay = passed.flatMap((u): Part[] => {
    if (isNear(own, at(u), reach, 1)) return [];
    return spans
      .filter(({ start, end }) => start.at < u - STEP && end.at > u + STEP)
      .flatMap(({ start, end }) =>
        bareAbout(u, Math.max(start.at, u - looked), Math.min(end.at, u + looked)),
      );
  });
  const parts = [...ends, ...onWay].filter(
    ({ from, to }) => !line.tight.some((part) => part.kept !== null && part.from < to && part.to > from),
  );
  return parts.length === 0 ? parts : onThinLine(map, lines, line, rules, parts);
}

const rowsIn = ({ layers }: SeamFit): Chain[] =>
  layers.flatMap(({ kind, chains }) => (kind === 'accent' ? [] : chains));

/** A stretch that begins or ends at a place, to within a step. */
const beside = (runs: readonly Run[], u: number): Run | undefined =>
  runs.find(({ from, to }) => Math.abs(from - u) <= STEP || Math.abs(to - u) <= STEP);

/**
 * Whether thread lies so near to a place. Chains are worked along their line, so whoever asks about its end looks from
 * theirs; needle points are asked first, as most places have one.
 */
function isNear(
  chains: readonly Chain[],
  [x, y]: readonly [number, number],
  within: number,
  sense: 1 | -1,
): boolean {
  const square = within * within;
  const order = sense === 1 ? chains : [...chains].reverse();
  for (const { nodes } of order) {
    for (let k = 0; k < nodes.length; k += 2) {
      const i = sense === 1 ? k : nodes.length - 2 - k;
      const dx = nodes[i] - x;
      const dy = nodes[i + 1] - y;
      if (dx * dx + dy * dy <= square) return true;
    }
  }
  for (const { path, pathStart } of order) {
    for (let leg = 0; leg + 1 < pathStart.length; leg++) {
      for (let p = 2 * pathStart[leg]; p + 2 < 2 * pathStart[leg + 1]; p += 2) {
        const ax = path[p] - x;
        const bx = path[p + 2] - x;
        // whoever is further away on one side at both ends is so between
        if ((ax < -within && bx < -within) || (ax > within && bx > within)) continue;
        const ay = path[p + 1] - y;
        const by = path[p + 3] - y;
        if ((ay < -within && by < -within) || (ay > within && by > within)) continue;
        if (nearestOnSegment([0, 0], [ax, ay], [bx, by]).distance <= within) return true;
      }
    }
  }
  return false;
}
