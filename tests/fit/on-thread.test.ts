import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Chain, SeamFit } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { sizedOrnament } from '../../src/fit/sized-ornament.js';
import { nearestOnSegment } from '../../src/geometry/nearest.js';
import { type Point, wrapAngle } from '../../src/geometry/point.js';
import { builtIn, legNamed, stitchNamed } from '../stitches/dictionary.js';
import { askFor } from './asks.js';
import { mapOfLines } from './block-of-lines.js';
import { corneredLine, curvedLine } from './lines-to-dress.js';

const knot = builtIn.ornaments.get('french-knot')!;
const knots = {
  row: 0,
  seat: 'crossing',
  figures: [sizedOrnament(knot, {})],
  threads: knot.threads,
  byHand: null,
  passes: 2,
  every: 1,
  from: 0,
  turn: 0,
  away: 0,
};

const worked = (points: readonly Point[], stitch: string, more: object): SeamFit =>
  fitLines(mapOfLines([points]), [askFor(1, stitch, more)], { gap: 0.6, outline: 'free' })[0].fit;

/** Ends of the legs of one kind, straight from hole to hole; of one class alone where it is given. */
function legs(chains: readonly Chain[], wanted: string, of?: number): [Point, Point][] {
  return chains.flatMap(({ from, to, nodes, kind, legClass }) =>
    [...from.keys()]
      .filter((leg) => kind[leg] === wanted && (of === undefined || legClass[leg] === of))
      .map((leg): [Point, Point] => {
        const hole = (node: number): Point => [nodes[2 * node], nodes[2 * node + 1]];
        return [hole(from[leg]), hole(to[leg])];
      }),
  );
}

const chainsOf = (fit: SeamFit, layer: 'row' | 'accent') =>
  fit.layers.filter(({ kind }) => kind === layer).flatMap(({ chains }) => chains);

/** How far a place lies from the nearest of these threads, and from the nearest but one. */
const fromThreads = (place: Point, threads: readonly [Point, Point][]): number[] =>
  threads.map(([a, b]) => nearestOnSegment(place, a, b).distance).sort((a, b) => a - b);

describe('what lies on a taut thread stays on it where the line bends', () => {
  // Day and Buckle, Art in Needlework, 1900, illustration 20: herringbone's strokes are straight and cross; common
  // practice sets a knot in every crossing.
  test('a knot in a crossing of herringbone lies on the stroke, whatever the line', () => {
    fc.assert(
      fc.property(fc.oneof(curvedLine, corneredLine), ({ points }) => {
        const fit = worked(points, 'herringbone', { sizes: { repeat: 8, width: 8 }, accents: [knots] });
        const strokes = legs(chainsOf(fit, 'row'), 'straight');
        const away = legs(chainsOf(fit, 'accent'), 'knot').map(([place]) => fromThreads(place, strokes)[0]);
        expect(away.filter((distance) => distance > 1e-6)).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  test('on a ring it lies on both strokes that cross there', () => {
    const ring = Array.from({ length: 121 }, (_, i): Point => {
      const angle = (2 * Math.PI * i) / 120;
      return [100 + 15 * Math.sin(angle), 100 - 15 * Math.cos(angle)];
    });
    const fit = worked(ring, 'herringbone', { sizes: { repeat: 8, width: 8 }, accents: [knots] });
    const strokes = legs(chainsOf(fit, 'row'), 'straight');
    const second = legs(chainsOf(fit, 'accent'), 'knot').map(([place]) => fromThreads(place, strokes)[1]);
    expect(second.length).toBeGreaterThan(10);
    expect(Math.max(...second)).toBeLessThan(0.15);
  });

  test('the ties of tied herringbone hold the strokes where they are', () => {
    const stroke = legNamed(stitchNamed('tied-herringbone').build({}), 'stroke');
    fc.assert(
      fc.property(curvedLine, ({ points }) => {
        const chains = chainsOf(worked(points, 'tied-herringbone', {}), 'row');
        const strokes = legs(chains, 'straight', stroke.class);
        const ties = legs(chains, 'knot');
        const away = ties.map(([place]) => fromThreads(place, strokes)[0]);
        expect(ties.length).toBeGreaterThan(0);
        expect(away.filter((distance) => distance > 1e-6)).toEqual([]);
      }),
      { numRuns: 10 },
    );
  });

  test('a stroke of double herringbone that dives beneath another goes straight on', () => {
    const dive = legNamed(stitchNamed('double-herringbone').build({}), 'beneath the first');
    fc.assert(
      fc.property(curvedLine, ({ points }) => {
        const chains = chainsOf(worked(points, 'double-herringbone', {}), 'row');
        const turns = chains.flatMap(({ legClass, from, to, nodes }) =>
          [...legClass.keys()]
            .filter((leg) => legClass[leg] === dive.class)
            .map((leg) => {
              const piece = (k: number) => {
                const [a, b] = [2 * from[k], 2 * to[k]];
                return Math.atan2(nodes[b + 1] - nodes[a + 1], nodes[b] - nodes[a]);
              };
              return wrapAngle(piece(leg) - piece(leg - 1));
            }),
        );
        expect(turns.length).toBeGreaterThan(0);
        expect(turns.filter((turn) => Math.abs(turn) > 1e-6)).toEqual([]);
      }),
      { numRuns: 10 },
    );
  });
});
