import { boxOf } from '../geometry/box.js';
import { type LineIndex, lineIndex } from '../geometry/line-index.js';
import type { Points } from '../geometry/polyline.js';
import type { LegKind } from '../stitches/stitch.js';
import type { Chain, Layer, LeftOut } from './fit.js';
import type { LineFit } from './fit-lines.js';
import { withoutLegs } from './kept-legs.js';
import type { Memory } from './memory.js';

/** Raised figures keep this far from the thread that will lie over a tucked end, mm: 1 mm clear and a thread's width. */
const CLEAR = 1.4;
/** What makes a lump under a covering thread. */
const RAISED: ReadonlySet<LegKind> = new Set<LegKind>(['loop', 'knot', 'petal', 'cord']);

/** A line under which another tucks, and where its thread lies. */
interface Over {
  readonly seam: number | 'outline';
  readonly thread: LineIndex;
}

/**
 * Where a treatment tucks under another, its knots, cords, loops and petals that would lie within a millimeter of the
 * other's thread are left out; accents, which are sewn last, are left out whole, in all their threads; and anywhere the
 * single petal that is left of a sprig. Linear in the legs, apart from an index over those of the lines that lie on top.
 */
export function leaveOutUnderThrough(fits: readonly LineFit[], memory: Memory): LineFit[] {
  const byLine = new Map(fits.map((line) => [line.fit.seam, line]));
  const places = new Map(fits.map((line, l) => [line, l]));
  const threadOf = (line: LineFit): LineIndex =>
    memory.of('thread', places.get(line)!, [line], () => lineIndex(chainsOf(line).map(visibleLegs)));
  return fits.map((line, l) => {
    if (!memory.of('raised', l, [line], () => mayBeLeftOut(line))) return line;
    const through = line.tucksUnder.map((seam) => byLine.get(seam)!);
    return memory.of('left out', l, [line, ...through], () =>
      leftOut(
        line,
        through.map((other): Over => ({ seam: other.fit.seam, thread: threadOf(other) })),
      ),
    );
  });
}

const mayBeLeftOut = ({ fit }: LineFit): boolean =>
  fit.layers.some(
    ({ kind, chains }) =>
      kind === 'accent' || chains.some((chain) => chain.kind.some((one) => RAISED.has(one))),
  );

function leftOut(line: LineFit, over: readonly Over[]): LineFit {
  const { layers, accents } = line.fit;
  const onThread = accents.map((_, index) => figuresOnThread(layers, index, over));
  return {
    ...line,
    fit: {
      ...line.fit,
      layers: layers.map((layer): Layer => {
        const chains =
          layer.kind === 'accent'
            ? layer.chains.filter((_, figure) => !onThread[layer.index].has(figure))
            : layer.chains.map((chain) => withoutRaised(chain, over));
        return { ...layer, chains: chains.filter((chain) => chain.from.length > 0) };
      }),
      accents: accents.map(({ asked, leftOut }, index) => ({
        asked,
        leftOut: [...leftOut, ...onThread[index].values()],
      })),
    },
  };
}

const chainsOf = ({ fit }: LineFit): Chain[] => fit.layers.flatMap(({ chains }) => chains);

/** Which figures of an accent come near the thread of another line, in whichever of their own threads, from 0. */
function figuresOnThread(
  layers: readonly Layer[],
  accent: number,
  over: readonly Over[],
): ReadonlyMap<number, LeftOut> {
  const threads = layers.filter(({ kind, index }) => kind === 'accent' && index === accent);
  const found = new Map<number, LeftOut>();
  for (let figure = 0; figure < (threads[0]?.chains.length ?? 0); figure++) {
    const own = threads.map(({ chains }) => chains[figure]);
    const other = over.find((one) => own.some((chain) => isFigureNear(chain, one)));
    if (!other) continue;
    const { middle } = roundBox(own.map(({ path }) => path));
    found.set(figure, { at: middle, why: 'on-thread', other: other.seam });
  }
  return found;
}

const isFigureNear = (chain: Chain, over: Over): boolean =>
  chain.kind.some((kind, leg) => kind !== 'under' && comesNear(chain, leg, [over]));

/** The legs that are seen, one polyline each. */
function visibleLegs(chain: Chain): { xy: Float64Array; start: Int32Array } {
  const seen: number[] = [];
  const start = [0];
  for (let leg = 0; leg < chain.from.length; leg++) {
    if (chain.kind[leg] === 'under') continue;
    for (let p = 2 * chain.pathStart[leg]; p < 2 * chain.pathStart[leg + 1]; p++) seen.push(chain.path[p]);
    start.push(seen.length / 2);
  }
  return { xy: Float64Array.from(seen), start: Int32Array.from(start) };
}

/**
 * Without the raised figures near other thread, and without what is then left of a cluster, or was left where it was
 * cut, when that is a single one: a lone petal looks like a mistake.
 */
function withoutRaised(chain: Chain, over: readonly Over[]): Chain {
  const figures = new Map<number, Map<number, boolean>>();
  for (let leg = 0; leg < chain.from.length; leg++) {
    if (!RAISED.has(chain.kind[leg])) continue;
    const cluster = figures.get(chain.unit[leg]) ?? new Map<number, boolean>();
    // Both halves of a loop share their class and unit, and go together.
    const isNear = cluster.get(chain.legClass[leg]) || comesNear(chain, leg, over);
    figures.set(chain.unit[leg], cluster.set(chain.legClass[leg], isNear));
  }
  let whole = 0;
  for (const cluster of figures.values()) whole = Math.max(whole, cluster.size);
  const bare = new Set<number>();
  for (const [unit, cluster] of figures) {
    const left = [...cluster.values()].filter((isNear) => !isNear).length;
    if (left === 1 && whole > 1) bare.add(unit);
  }
  return withoutLegs(
    chain,
    (leg) =>
      RAISED.has(chain.kind[leg]) &&
      (bare.has(chain.unit[leg]) || figures.get(chain.unit[leg])!.get(chain.legClass[leg])!),
  );
}

function comesNear(chain: Chain, leg: number, over: readonly Over[]): boolean {
  const around = CLEAR + chain.size[leg] / 2;
  const path = chain.path.subarray(2 * chain.pathStart[leg], 2 * chain.pathStart[leg + 1]);
  const { middle, radius } = roundBox([path]);
  return over.some(({ thread }) => {
    // most are far from any, which one look from the middle tells
    if (thread.distance(...middle, around + radius) === Infinity) return false;
    for (let i = 0; i < path.length; i += 2) {
      if (thread.distance(path[i], path[i + 1], around) <= around) return true;
    }
    return false;
  });
}

/** The circle round the box of some lines. */
function roundBox(lines: readonly Points[]): { middle: [number, number]; radius: number } {
  const { left, top, right, bottom } = boxOf(lines);
  return {
    middle: [(left + right) / 2, (top + bottom) / 2],
    radius: Math.hypot(right - left, bottom - top) / 2,
  };
}
