import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain } from '../../src/fit/fit.js';
import type { Runs } from '../../src/needle/run.js';
import { sewChain, sewChains, Workbench } from '../../src/needle/sew-chain.js';
import {
  blanket,
  bow,
  ChainMaker,
  craft,
  feather,
  fly,
  herringbone,
  ladder,
  ring,
  sprigs,
} from './chains.js';

type Spot = readonly [number, number];

const runsOf = ({ xy, start }: Runs): Spot[][] =>
  Array.from({ length: start.length - 1 }, (_, r) =>
    Array.from(
      { length: start[r + 1] - start[r] },
      (_, i): Spot => [xy[2 * (start[r] + i)], xy[2 * (start[r] + i) + 1]],
    ),
  );

const far = (a: Spot, b: Spot) => Math.hypot(b[0] - a[0], b[1] - a[1]);
const lengths = (run: Spot[]) => run.slice(1).map((spot, i) => far(run[i], spot));

function toSegment(p: Spot, a: Spot, b: Spot): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)));
  return far(p, [a[0] + t * dx, a[1] + t * dy]);
}

function pathOf(chain: Chain, leg: number): Spot[] {
  const out: Spot[] = [];
  for (let i = chain.pathStart[leg]; i < chain.pathStart[leg + 1]; i++)
    out.push([chain.path[2 * i], chain.path[2 * i + 1]]);
  return out;
}

const toPath = (p: Spot, path: Spot[]) =>
  Math.min(...path.slice(1).map((spot, i) => toSegment(p, path[i], spot)));

const scaled = (chain: Chain, by: number): Chain => ({
  ...chain,
  nodes: chain.nodes.map((at) => at * by),
  path: chain.path.map((at) => at * by),
});

const samples: [string, Chain][] = [
  ['herringbone', herringbone(7)],
  ['feather', feather(8)],
  ['blanket', blanket(8)],
  ['fly', fly(6)],
  ['two rails', ladder(6)],
  ['ring', ring(9)],
  ['sprigs', sprigs(4)],
];

describe.each(samples)('%s as needle points', (_, chain) => {
  const sewn = runsOf(sewChain(chain, craft).runs);

  it('has every run tied in and off: forward, back, forward by 0.6 mm', () => {
    for (const run of sewn) {
      for (const [a, b, c, d] of [run.slice(0, 4), run.slice(-4).reverse()]) {
        expect(c).toEqual(a);
        expect(d).toEqual(b);
        // on a curve the tie's stitch is a chord across 0.6 mm of it
        expect(far(a, b)).toBeGreaterThan(0.55);
        expect(far(a, b)).toBeLessThan(0.6 + 1e-9);
      }
    }
  });

  it('has no stitch under 0.4 mm and none over the longest', () => {
    for (const run of sewn) {
      for (const length of lengths(run)) {
        expect(length).toBeGreaterThan(0.4 - 1e-6);
        // a hole that scatters may lengthen a stitch by its own 0.3 mm
        expect(length).toBeLessThanOrEqual(craft.longest + 0.3);
      }
    }
  });

  it('lies on its legs: every stitch belongs to one, but for the width of passes side by side and scattered holes', () => {
    const paths = Array.from(chain.from, (_, leg) => pathOf(chain, leg));
    for (const run of sewn) {
      run.slice(1).forEach((b, i) => {
        const a = run[i];
        const middle: Spot = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
        const off = Math.min(...paths.map((path) => Math.max(...[a, middle, b].map((p) => toPath(p, path)))));
        expect(off).toBeLessThan(1.5 * craft.spread + 0.3);
      });
    }
  });

  it('comes out the same every time, alone or after others', () => {
    const again = sewChains([blanket(3), feather(20), chain], craft).runs;
    expect(runsOf(again).slice(2)).toEqual(sewn);
  });

  it('comes out the same on a workbench that others have used', () => {
    const bench = new Workbench();
    for (const [, other] of samples) sewChains([other, scaled(other, 1.07)], craft, bench);
    expect(runsOf(sewChains([chain], craft, bench).runs)).toEqual(sewn);
  });
});

describe('a straight', () => {
  it('of up to the longest stitch is one stitch', () => {
    const chain = new ChainMaker()
      .leg(0, 0, 'straight', 1, [
        [0, 0],
        [6.9, 0],
      ])
      .chain();
    const [run] = runsOf(sewChain(chain, craft).runs);
    // tied in and off, one stitch remains between the ties
    expect(lengths(run).map((length) => Number(length.toFixed(6)))).toEqual([
      0.6, 0.6, 0.6, 5.7, 0.6, 0.6, 0.6,
    ]);
  });

  it('beyond it is divided evenly, each pass a third of a stitch further on', () => {
    const maker = new ChainMaker()
      .leg(0, 0, 'straight', 2, [
        [-3, 0],
        [0, 0],
      ])
      .leg(0, 1, 'straight', 3, [
        [0, 0],
        [18, 0],
      ]);
    const chain = maker
      .leg(0, 2, 'straight', 2, [
        [18, 0],
        [21, 0],
      ])
      .chain();
    const [run] = runsOf(sewChain(chain, craft).runs);
    const inner = run.map(([x]) => Number(x.toFixed(6))).filter((x) => x > 0.7 && x < 17.3);
    expect([...inner].sort((a, b) => a - b)).toEqual([2, 4, 6, 8, 10, 12, 14, 16]);
  });
});

describe('a curve', () => {
  const path = bow([0, 0], [8, 0], 2, 25);
  const chain = new ChainMaker().leg(0, 0, 'curve', 3, path).chain();
  const [run] = runsOf(sewChain(chain, craft).runs);

  it('has chords of at most 1.2 mm that stray less than 0.08 mm from its line or its neighbors', () => {
    // beside a tie a chord may take in what the tie has left of the next one
    for (const length of lengths(run).slice(4, -4)) expect(length).toBeLessThan(1.2);
    const one = new ChainMaker().leg(0, 0, 'curve', 1, path).chain();
    const [single] = runsOf(sewChain(one, craft).runs);
    for (const p of path) expect(toPath(p, single)).toBeLessThan(0.08);
  });

  it('has its passes side by side in the middle and together at the ends', () => {
    const heights = run.filter(([x]) => Math.abs(x - 4) < 0.6).map(([, y]) => y);
    const spread = Math.max(...heights) - Math.min(...heights);
    expect(spread).toBeGreaterThan(2 * craft.spread - 0.1);
    expect(spread).toBeLessThan(2 * craft.spread + 0.1);
    expect(new Set(run.filter(([x]) => x < 0.01).map(String)).size).toBe(1);
  });

  it('keeps its sagitta on a tight bend, with shorter chords', () => {
    const tight = Array.from({ length: 41 }, (_, i): Spot => {
      const angle = (Math.PI * i) / 40;
      return [0.9 - 0.9 * Math.cos(angle), -0.9 * Math.sin(angle)];
    });
    const straight: Spot[] = [
      [0, 5],
      [0, 0],
    ];
    const maker = new ChainMaker().leg(0, 0, 'straight', 1, straight).leg(0, 1, 'curve', 1, tight);
    const around = maker
      .leg(0, 2, 'straight', 1, [
        [1.8, 0],
        [1.8, 5],
      ])
      .chain();
    const [bend] = runsOf(sewChain(around, craft).runs);
    for (const p of tight) expect(toPath(p, bend)).toBeLessThan(0.08);
    for (const length of lengths(bend)) expect(length).toBeGreaterThan(0.4);
  });
});

describe('the shortest stitch of a thread', () => {
  const arc = (radius: number, turn: number): Spot[] =>
    Array.from({ length: 121 }, (_, i): Spot => {
      const angle = (turn * i) / 120;
      return [radius * Math.sin(angle), radius - radius * Math.cos(angle)];
    });
  /** Led in and out along its ends, so that the ties lie beyond the curve. */
  const sewnOnce = (path: Spot[], shortest: number) => {
    const [a, b] = path;
    const [c, d] = path.slice(-2);
    const beyond = (p: Spot, q: Spot): Spot => [
      p[0] + (6 * (p[0] - q[0])) / far(p, q),
      p[1] + (6 * (p[1] - q[1])) / far(p, q),
    ];
    const chain = new ChainMaker()
      .leg(0, 0, 'straight', 1, [beyond(a, b), a])
      .leg(0, 1, 'curve', 1, path)
      .leg(0, 2, 'straight', 1, [d, beyond(d, c)])
      .chain();
    return runsOf(sewChain(chain, { ...craft, shortest }).runs)[0];
  };
  // a tie's own stitches are 0.6 mm, and it takes from the first chord and the last
  const inner = (run: Spot[]) => lengths(run).slice(4, -4);

  // shortest good stitches: common practice. A sagitta of 0.075 mm lets a chord c go round a radius of c^2 / 0.6; n chords
  // of a curve that has no room for n + 1 are up to 1 + 1/n times the shortest
  it.each([
    ['No. 40', 0.8, 1.6],
    ['No. 30', 1.2, 4],
    ['No. 12', 2, 16],
  ])('%s, %f mm, is kept on every curve that allows it', (_, shortest, least) => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 6, max: 30, noNaN: true }),
        (t, length) => {
          const radius = least * (1 + 20 * t * t);
          fc.pre(length < 2 * Math.PI * radius - 1);
          const path = arc(radius, length / radius);
          const run = sewnOnce(path, shortest);
          for (const stitch of inner(run)) expect(stitch).toBeGreaterThanOrEqual(shortest - 1e-9);
          for (const p of path) expect(toPath(p, run)).toBeLessThan(0.08);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('yields to the sagitta on a tighter bend, down to 0.4 mm', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 1, noNaN: true }), (radius) => {
        const path = arc(radius, Math.PI);
        const run = sewnOnce(path, 2);
        // on a half circle tighter than that no even chords of 0.4 mm keep it
        if (radius > 0.5) for (const p of path) expect(toPath(p, run)).toBeLessThan(0.08);
        for (const stitch of inner(run)) expect(stitch).toBeGreaterThan(0.4 - 1e-6);
      }),
    );
  });

  it('is kept at the ends of a long straight, whose passes are staggered', () => {
    for (let length = 7.1; length < 30; length += 0.37) {
      const chain = new ChainMaker()
        .leg(0, 0, 'straight', 3, [
          [0, 0],
          [length, 0],
        ])
        .chain();
      const [run] = runsOf(sewChain(chain, { ...craft, shortest: 1.6 }).runs);
      for (const stitch of inner(run)) expect(stitch).toBeGreaterThan(1.6 - 1e-9);
      for (const stitch of inner(run)) expect(stitch).toBeLessThan(craft.longest + 1e-9);
    }
  });
});

describe('a French knot', () => {
  // numbers: common practice
  it.each([1.3, 1.5, 1.8])(
    'of %f mm has 10 to 14 piercings in two turns, none in the center, and measures that across',
    (size) => {
      const chain = new ChainMaker()
        .leg(0, 0, 'straight', 1, [
          [0, 5],
          [5, 5],
        ])
        .leg(
          0,
          1,
          'knot',
          3,
          [
            [5, 5],
            [5, 5],
          ],
          size,
        )
        .leg(0, 2, 'straight', 1, [
          [5, 5],
          [9, 5],
        ])
        .chain();
      const [run] = runsOf(sewChain(chain, craft).runs);
      const knot = run.filter((p) => far(p, [5, 5]) < size / 2);
      expect(new Set(knot.map(String)).size).toBeGreaterThanOrEqual(10);
      expect(new Set(knot.map(String)).size).toBeLessThanOrEqual(14);
      const radii = knot.map((p) => far(p, [5, 5]));
      expect(Math.min(...radii)).toBeGreaterThan(0.3);
      expect(2 * Math.max(...radii) + craft.threadWidth).toBeCloseTo(size, 1);
      let turned = 0;
      // the last point is where the next leg starts
      knot.slice(1, -1).forEach((p, i) => {
        const a = Math.atan2(knot[i][1] - 5, knot[i][0] - 5);
        const b = Math.atan2(p[1] - 5, p[0] - 5);
        turned += ((b - a + 3 * Math.PI) % (2 * Math.PI)) - Math.PI;
      });
      // and some more, to where the thread goes on
      expect(turned / (2 * Math.PI)).toBeGreaterThan(1.9);
      expect(turned / (2 * Math.PI)).toBeLessThan(2.5);
    },
  );

  it('is closed, and the thread goes on from its edge: nothing but the knot lies over it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.3, max: 1.8, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.boolean(),
        (size, before, after, curved) => {
          const out = (angle: number): Spot => [6 * Math.cos(angle), 6 * Math.sin(angle)];
          const kind = curved ? 'curve' : 'straight';
          const path = (a: Spot, b: Spot) => (curved ? bow(a, b, 0.5) : [a, b]);
          const center: Spot = [0, 0];
          const chain = new ChainMaker()
            .leg(0, 0, kind, 1, path(out(before), center))
            .leg(0, 1, 'knot', 1, [center, center], size)
            .leg(0, 2, kind, 1, path(center, out(after)))
            .chain();
          const [run] = runsOf(sewChain(chain, craft).runs);
          const radii = run.map((p) => far(p, center));
          const edge = (size - craft.threadWidth) / 2;
          const onEdge = [...radii.keys()].filter((i) => Math.abs(radii[i] - edge) < 1e-6);
          const [first, last] = [onEdge[0], onEdge[onEdge.length - 1]];
          expect(far(run[first], run[last])).toBeLessThan(1e-6);
          expect(last - first + 1).toBe(onEdge.length);
          expect(onEdge.length).toBeGreaterThanOrEqual(7);
          const on = radii.slice(last);
          expect(on.every((radius, i) => i === 0 || i > on.length - 5 || radius > on[i - 1] - 0.05)).toBe(
            true,
          );
        },
      ),
    );
  });

  it('alone is tied in and off within itself', () => {
    const chain = new ChainMaker()
      .leg(
        0,
        0,
        'knot',
        1,
        [
          [5, 5],
          [5, 5],
        ],
        1.5,
      )
      .chain();
    const [run] = runsOf(sewChain(chain, craft).runs);
    for (const p of run) {
      expect(far(p, [5, 5])).toBeLessThan(0.75);
      expect(far(p, [5, 5])).toBeGreaterThan(0.2);
    }
  });

  it('at the end of a leg lies over it, and the leg ends under its inner turn', () => {
    const maker = new ChainMaker()
      .leg(0, 0, 'straight', 3, [
        [0, 0],
        [5, 0],
      ])
      .leg(
        0,
        1,
        'knot',
        1,
        [
          [5, 0],
          [5, 0],
        ],
        1.5,
      );
    const [run] = runsOf(sewChain(maker.chain(), craft).runs);
    expect(Math.min(...run.map((p) => far(p, [5, 0])))).toBeGreaterThan(0.3);
    expect(far(run[run.length - 1], [5, 0])).toBeGreaterThan(0.3);
  });
});

describe('a petal', () => {
  it('is a narrow satin of its size over a run along its middle', () => {
    const chain = new ChainMaker().leg(0, 0, 'petal', 1, bow([0, 0], [6, 0], 0.001), 1.6).chain();
    const [run] = runsOf(sewChain(chain, craft).runs);
    const heights = run.map(([, y]) => y);
    expect(Math.max(...heights) - Math.min(...heights)).toBeCloseTo(1.6, 1);
    // the padding: there and back along the middle before the first row
    const first = run.findIndex(([, y]) => Math.abs(y) > 0.1);
    expect(Math.max(...run.slice(0, first).map(([x]) => x))).toBeCloseTo(6, 1);
  });
});

describe('a figure with many rays', () => {
  it('starts its rays on a small ring, 0.4 to 0.6 mm about the point where they meet', () => {
    const maker = new ChainMaker();
    for (let i = 0; i < 12; i++) {
      const angle = (Math.PI * i) / 6;
      maker.leg(0, 0, 'straight', 2, [
        [0, 0],
        [6 * Math.cos(angle), 6 * Math.sin(angle)],
      ]);
    }
    const [run] = runsOf(sewChain(maker.chain(), craft).runs);
    const near = run.map((p) => far(p, [0, 0]));
    expect(Math.min(...near)).toBeGreaterThanOrEqual(0.4);
    expect(near.filter((d) => d <= 0.6).length).toBeGreaterThanOrEqual(12);
  });
});
