import { type LineIndex, lineIndex } from '../geometry/line-index.js';
import type { LegKind } from '../stitches/stitch.js';
import type { Chain, Layer } from './fit.js';
import type { LineFit } from './fit-lines.js';
import { withoutLegs } from './kept-legs.js';

/** Raised figures keep this far from the thread that will lie over a tucked end, mm: 1 mm clear and a thread's width. */
const CLEAR = 1.4;
/** What makes a lump under a covering thread. */
const RAISED: ReadonlySet<LegKind> = new Set<LegKind>(['loop', 'knot', 'petal', 'cord']);

/**
 * Where a treatment tucks under another, its knots, cords, loops and petals that would lie within a millimeter of the
 * other's thread are left out; and anywhere the single petal that is left of a sprig. Linear in the legs, apart from an
 * index over those of the lines that lie on top.
 */
export function leaveOutUnderThrough(fits: readonly LineFit[]): LineFit[] {
  const byLine = new Map(fits.map((line) => [line.fit.seam, line]));
  const indices = new Map<number | 'outline', LineIndex>();
  const indexOf = (seam: number | 'outline') => {
    const known = indices.get(seam);
    if (known) return known;
    const made = lineIndex(chainsOf(byLine.get(seam)!).map(visibleLegs));
    indices.set(seam, made);
    return made;
  };
  return fits.map((line) => {
    const raised = chainsOf(line).some((chain) => chain.kind.some((kind) => RAISED.has(kind)));
    if (!raised) return line;
    const over = line.tucksUnder.map(indexOf);
    const layers = line.fit.layers.map(
      (layer): Layer => ({
        ...layer,
        chains: layer.chains
          .map((chain) => (layer.kind === 'accent' ? withoutFigure(chain, over) : withoutRaised(chain, over)))
          .filter((chain) => chain.from.length > 0),
      }),
    );
    return { ...line, fit: { ...line.fit, layers } };
  });
}

const chainsOf = ({ fit }: LineFit): Chain[] => fit.layers.flatMap(({ chains }) => chains);

/** A figure stays whole or goes whole. */
function withoutFigure(chain: Chain, over: readonly LineIndex[]): Chain {
  const isNear = chain.kind.some((kind, leg) => kind !== 'under' && comesNear(chain, leg, over));
  return isNear ? withoutLegs(chain, () => true) : chain;
}

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
function withoutRaised(chain: Chain, over: readonly LineIndex[]): Chain {
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

function comesNear(chain: Chain, leg: number, over: readonly LineIndex[]): boolean {
  const around = CLEAR + chain.size[leg] / 2;
  const path = chain.path.subarray(2 * chain.pathStart[leg], 2 * chain.pathStart[leg + 1]);
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < path.length; i += 2) {
    minX = Math.min(minX, path[i]);
    maxX = Math.max(maxX, path[i]);
    minY = Math.min(minY, path[i + 1]);
    maxY = Math.max(maxY, path[i + 1]);
  }
  const [x, y, half] = [(minX + maxX) / 2, (minY + maxY) / 2, Math.hypot(maxX - minX, maxY - minY) / 2];
  return over.some((index) => {
    // most are far from any, which one look from the middle tells
    if (index.distance(x, y, around + half) === Infinity) return false;
    for (let i = 0; i < path.length; i += 2) {
      if (index.distance(path[i], path[i + 1], around) <= around) return true;
    }
    return false;
  });
}
