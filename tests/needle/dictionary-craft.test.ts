import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Chain } from '../../src/fit/fit.js';
import { craftFor } from '../../src/needle/craft.js';
import { type Legs, Manner, measureLegs } from '../../src/needle/legs.js';
import { routesOf, sewChain } from '../../src/needle/sew-chain.js';
import { type LegSewn, legsSewn, type Spot } from './legs-sewn.js';
import { anyOrnament, anyStitch, type Worked } from './worked.js';

/** Numbers: common practice for No. 40. */
const LONGEST = 7;
const SHORTEST = 0.8;
const HOLE_LIMIT = 6;
const WEIGHT = 'No. 40';
/** Lengths that differ by less are the same, mm. */
const SAME = 1e-6;

const far = (a: Spot, b: Spot): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
const lengths = (points: readonly Spot[]): number[] =>
  points.slice(1).map((point, i) => far(points[i], point));

function toSegment(p: Spot, a: Spot, b: Spot): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)));
  return far(p, [a[0] + t * dx, a[1] + t * dy]);
}
const toPath = (p: Spot, path: readonly Spot[]): number =>
  Math.min(...path.slice(1).map((spot, i) => toSegment(p, path[i], spot)));

const nodeOf = ({ nodes }: Chain, node: number): Spot => [nodes[2 * node], nodes[2 * node + 1]];
const pathOf = ({ path, pathStart }: Chain, leg: number): Spot[] =>
  Array.from({ length: pathStart[leg + 1] - pathStart[leg] }, (_, i): Spot => {
    const p = 2 * (pathStart[leg] + i);
    return [path[p], path[p + 1]];
  });

/** One pass of a leg, with all that is known of it. */
interface Pass extends LegSewn {
  readonly chain: Chain;
  readonly legs: Legs;
  /** nodes that it goes from and to */
  readonly ends: readonly [number, number];
  readonly told: string;
}

function passesOf({ name, chains }: Worked): Pass[] {
  return chains.flatMap((chain) => {
    const legs = measureLegs(chain);
    return legsSewn(chain, craftFor(WEIGHT))
      .flat()
      .map((one): Pass => {
        const { leg, back } = one;
        const [from, to] = [chain.from[leg], chain.to[leg]];
        const told = `${name}: leg ${leg}, ${legs.length[leg].toFixed(2)} mm, pass ${one.turn} of ${one.of}`;
        return { ...one, chain, legs, ends: back ? [to, from] : [from, to], told };
      });
  });
}

const works = [...fc.sample(anyStitch(), 150), ...fc.sample(anyOrnament, 50)];
const passes = works.flatMap(passesOf);
const isWorked = (manner: number) => (one: Pass) => one.legs.manner[one.leg] === manner;
/** Both its holes lie in the points that legs share, not beside them. */
const isWhole = ({ chain, ends: [a, b], points }: Pass): boolean =>
  far(points[0], nodeOf(chain, a)) < SAME && far(points[points.length - 1], nodeOf(chain, b)) < SAME;

const told = (wrong: readonly Pass[], more: (pass: Pass) => string = () => ''): string[] =>
  wrong.slice(0, 5).map((pass) => `${pass.told} ${more(pass)}`);

describe('a straight leg of any stitch or ornament, at any size', () => {
  const straights = passes.filter(isWorked(Manner.Straight)).filter(isWhole);

  test('is one stitch up to 7 mm', () => {
    const short = straights.filter(({ points }) => far(points[0], points[points.length - 1]) <= LONGEST);
    expect(short.length).toBeGreaterThan(1000);
    expect(told(short.filter(({ points }) => points.length !== 2))).toEqual([]);
  });

  test('is divided evenly beyond it, each pass a third of a stitch further on', () => {
    const long = straights.filter(({ points }) => far(points[0], points[points.length - 1]) > LONGEST + SAME);
    expect(long.length).toBeGreaterThan(100);
    const wrong = long.filter(({ points, turn, back }) => {
      const [a, b] = back ? [points[points.length - 1], points[0]] : [points[0], points[points.length - 1]];
      const length = far(a, b);
      const stitch = length / Math.ceil(length / LONGEST - 1e-9);
      const along = points
        .slice(1, -1)
        .map(([x, y]) => ((x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1])) / length);
      const third = ((turn % 3) * stitch) / 3;
      const off = along.map(
        (at) => Math.abs((at - third) / stitch - Math.round((at - third) / stitch)) * stitch,
      );
      return along.length === 0 || Math.max(...off) > 1e-6 || Math.max(...lengths(points)) > LONGEST + 0.3;
    });
    expect(told(wrong)).toEqual([]);
  });
});

describe('a curve of any stitch or ornament, at any size', () => {
  const curves = passes
    .filter(isWorked(Manner.Curve))
    .filter(isWhole)
    .filter(({ of, chain, leg }) => of === 1 && chain.kind[leg] !== 'under');

  test('strays less than 0.08 mm from its line', () => {
    expect(curves.length).toBeGreaterThan(300);
    const stray = ({ chain, leg, points }: Pass) =>
      Math.max(...pathOf(chain, leg).map((spot) => toPath(spot, points)));
    const wrong = curves.filter((pass) => !isTight(pathOf(pass.chain, pass.leg)) && stray(pass) >= 0.08);
    expect(told(wrong, (pass) => stray(pass).toFixed(3))).toEqual([]);
  });

  test('has chords shorter than 0.8 mm only where hardly longer ones follow it', () => {
    const short = curves.filter(({ points }) => Math.min(...lengths(points)) < SHORTEST - SAME);
    expect(short.length).toBeGreaterThan(30);
    const least = ({ points }: Pass) => Math.min(...lengths(points));
    const wrong = short.filter((pass) => least(pass) < longestShortest(pathOf(pass.chain, pass.leg)) - 0.1);
    expect(
      told(
        wrong,
        (pass) =>
          `${least(pass).toFixed(2)} mm of ${lengths(pass.points).map((l) => l.toFixed(2))}, ${longestShortest(pathOf(pass.chain, pass.leg)).toFixed(2)} do`,
      ),
    ).toEqual([]);
  });

  test('has chords longer than 1.2 mm only where two of 0.8 mm have no room', () => {
    const wrong = curves.filter(({ points }) => Math.max(...lengths(points)) > 2.06 * SHORTEST);
    expect(told(wrong, ({ points }) => Math.max(...lengths(points)).toFixed(2))).toEqual([]);
  });
});

/** Whether a line bends more tightly than a radius of 0.45 mm: that is rounded. */
function isTight(path: readonly Spot[]): boolean {
  return path.slice(2).some((c, i) => {
    const [a, b] = [path[i], path[i + 1]];
    const area = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
    return (far(a, b) * far(b, c) * far(c, a)) / (2 * area || 1e-12) < 0.45;
  });
}

/** The shortest chord of the division whose shortest is longest, of all that follow a line within 0.07 mm; by trying all, ends 0.05 mm apart. */
function longestShortest(path: readonly Spot[]): number {
  const places: Spot[] = [path[0]];
  path.slice(1).forEach((b, i) => {
    const a = path[i];
    const parts = Math.max(1, Math.ceil(far(a, b) / 0.05));
    for (let k = 1; k <= parts; k++) {
      const t = k / parts;
      places.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
    }
  });
  const follows = (i: number, j: number): boolean => {
    for (let k = i + 1; k < j; k++) if (toSegment(places[k], places[i], places[j]) > 0.07) return false;
    return true;
  };
  const best = new Array<number>(places.length).fill(0);
  best[0] = Number.POSITIVE_INFINITY;
  for (let j = 1; j < places.length; j++) {
    for (let i = j - 1; i >= 0 && j - i < 60; i--) {
      const least = Math.min(best[i], far(places[i], places[j]));
      if (least > best[j] && follows(i, j)) best[j] = least;
    }
  }
  return best[places.length - 1];
}

describe('a hole of any stitch or ornament, at any size', () => {
  const rays = (chain: Chain, node: number): number =>
    chain.from.reduce(
      (sum, from, leg) =>
        chain.kind[leg] === 'under' || chain.kind[leg] === 'knot'
          ? sum
          : sum + Number(from === node) + Number(chain.to[leg] === node),
      0,
    );
  const knotted = (chain: Chain, node: number) =>
    chain.kind.some((kind, leg) => kind === 'knot' && chain.from[leg] === node);
  const arrivals = passes
    .filter((pass) => !isWorked(Manner.Knot)(pass) && !knotted(pass.chain, pass.ends[1]))
    .filter(({ legs, leg }) => legs.length[leg] > 0.8)
    .map((pass) => ({
      ...pass,
      away: far(pass.points[pass.points.length - 1], nodeOf(pass.chain, pass.ends[1])),
    }));

  test('lies in the point that legs share, or 0.2 to 0.3 mm beside it, or on the ring of a figure with many rays', () => {
    const wrong = arrivals.filter(({ away, chain, ends, legs, leg }) => {
      if (away < SAME || (away > 0.2 - SAME && away < 0.3 + SAME)) return false;
      // a ring takes less of a short leg, and the holes of many passes scatter about their place on it
      const ring = Math.min(0.5, 0.3 * legs.length[leg]);
      return rays(chain, ends[1]) < 6 || away < Math.min(0.4, ring) - 0.3 || away > 0.6 + 0.3;
    });
    expect(
      told(wrong, (pass) =>
        far(pass.points[pass.points.length - 1], nodeOf(pass.chain, pass.ends[1])).toFixed(2),
      ),
    ).toEqual([]);
    expect(arrivals.filter(({ away }) => away > 0.1 && away < 0.35).length).toBeGreaterThan(100);
    expect(arrivals.filter(({ away }) => away >= 0.4).length).toBeGreaterThan(100);
  });

  test('is shared by six arrivals at most before more come to lie beside it', () => {
    const together = new Map<string, number>();
    for (const { chain, ends, away, told: text } of arrivals) {
      if (away >= SAME) continue;
      const key = `${text.split(':')[0]} ${works.findIndex(({ chains }) => chains.includes(chain))}/${passesIndex(chain)} ${ends[1]}`;
      together.set(key, (together.get(key) ?? 0) + 1);
    }
    expect([...together].filter(([, count]) => count > HOLE_LIMIT)).toEqual([]);
  });
});

const allChains = works.flatMap(({ chains }) => chains);
const numbers = new Map(allChains.map((chain, i) => [chain, i]));
const passesIndex = (chain: Chain): number => numbers.get(chain)!;

describe('a French knot of any stitch or ornament, at any size', () => {
  const knots = passes.filter(isWorked(Manner.Knot));

  test('is 1.3 to 1.8 mm across, in 10 to 14 piercings, none in its center', () => {
    expect(knots.length).toBeGreaterThan(100);
    const wrong = knots.filter(({ chain, leg, points, ends }) => {
      const own = points.slice(1).filter((spot) => far(spot, nodeOf(chain, ends[0])) < 1);
      const holes = own.map((spot) => far(spot, nodeOf(chain, ends[0])));
      const size = 2 * Math.max(...holes) + 0.4;
      const isSized = size > 1.3 - 0.01 && size < 1.8 + 0.01 && Math.abs(size - chain.size[leg]) < 0.01;
      return !isSized || own.length < 10 || own.length > 15 || Math.min(...holes) < 0.3;
    });
    expect(
      told(wrong, ({ points, chain, leg }) => `${points.length} piercings, ${chain.size[leg]} mm`),
    ).toEqual([]);
  });
});

describe('the ties of any stitch or ornament, at any size', () => {
  // common practice: a machine's tie is three short stitches
  test('are three stitches of 0.6 mm, or a whole leg that is shorter than 1 mm, within the first leg or the last one', () => {
    const wrong: string[] = [];
    for (const { name, chains } of works) {
      for (const chain of chains) {
        const routes = routesOf(chain).filter(({ trail }) => trail.length > 0);
        const { xy, start } = sewChain(chain, craftFor(WEIGHT)).runs;
        const at = (i: number): Spot => [xy[2 * i], xy[2 * i + 1]];
        if (start.length - 1 !== routes.length) continue;
        routes.forEach(({ trail }, r) => {
          const last = start[r + 1] - 1;
          const counts = new Map<number, number>();
          for (const step of trail) counts.set(step >> 1, (counts.get(step >> 1) ?? 0) + 1);
          const beyond = (leg: number, spot: Spot) => {
            const path = pathOf(chain, leg);
            const lanes = ((counts.get(leg)! - 1) / 2) * 0.22;
            const around = chain.size[leg] > 0 ? chain.size[leg] / 2 : Math.max(lanes + 0.08, 0.3);
            return (chain.from[leg] === chain.to[leg] ? far(spot, path[0]) : toPath(spot, path)) - around;
          };
          for (const [steps, tie] of [
            [trail.slice(0, 2), [0, 1, 2, 3].map((i) => at(start[r] + i))],
            [trail.slice(-2), [0, 1, 2, 3].map((i) => at(last - i))],
          ] as const) {
            const length = far(tie[0], tie[1]);
            const off = Math.min(...Array.from(steps, (step) => beyond(step >> 1, tie[1])));
            const isTie = far(tie[0], tie[2]) < SAME && far(tie[1], tie[3]) < SAME;
            if (!isTie || length < 0.4 - SAME || length > 1 || off > SAME)
              wrong.push(`${name} at ${tie[0]}: ${length.toFixed(2)} mm, ${off.toFixed(2)} off`);
          }
        });
      }
    }
    expect(wrong.slice(0, 8)).toEqual([]);
  });
});
