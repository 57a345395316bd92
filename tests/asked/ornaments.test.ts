import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placedOrnaments } from '../../src/asked/ornaments.js';
import { dress } from '../../src/dress.js';
import type { PlacedOrnament } from '../../src/formats/dressing.js';
import { builtIn, endsOf, legNamed } from '../stitches/dictionary.js';
import { dressingOf, oneSeam } from './dressed-line.js';

const placed = (ornament: string, more: Partial<PlacedOrnament> = {}): PlacedOrnament => ({
  ornament,
  at: [60, 60],
  parameters: {},
  thread: 1,
  passes: 2,
  ...more,
});
const bare = { map: oneSeam.map, thread: [], laid: [], marks: [], keepClear: [] };
const inPlace = (...ornaments: PlacedOrnament[]) =>
  placedOrnaments(dressingOf({}, { ornaments }), builtIn, bare).layers;
const around = fc.double({ min: 20, max: 180, noNaN: true });

describe('ornaments in a patch', () => {
  test('stand with their middle where asked, upright: a petal points up', () => {
    fc.assert(
      fc.property(around, around, fc.double({ min: 4.2, max: 10, noNaN: true }), (x, y, size) => {
        const [{ chain }] = inPlace(placed('daisy-petal', { at: [x, y], parameters: { size } }));
        const end = chain.path.length - 2;
        expect(chain.path[0]).toBeCloseTo(x, 9);
        expect(chain.path[1]).toBeCloseTo(y, 9);
        // the stitch that holds it is its last leg and its far end; y grows downwards
        expect(chain.path[end]).toBeCloseTo(x, 9);
        expect(chain.path[end + 1]).toBeCloseTo(y - size, 9);
      }),
      { numRuns: 30 },
    );
  });

  test('are turned counterclockwise as seen: by a quarter, a petal points left', () => {
    const [{ chain }] = inPlace(placed('daisy-petal', { turn: 90 }));
    const { size } = {
      size: endsOf(legNamed(builtIn.ornaments.get('daisy-petal')!.build({}), 'hold'))[1][1],
    };
    const end = chain.path.length - 2;
    expect(chain.path[end]).toBeCloseTo(60 - size, 9);
    expect(chain.path[end + 1]).toBeCloseTo(60, 9);
  });

  test('turned by any angle are the upright ones turned about their middle', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...builtIn.ornaments.keys()),
        fc.double({ min: -180, max: 180, noNaN: true }),
        (name, turn) => {
          const [upright, turned] = [inPlace(placed(name)), inPlace(placed(name, { turn }))];
          const [sin, cos] = [Math.sin((turn * Math.PI) / 180), Math.cos((turn * Math.PI) / 180)];
          const misses = upright.flatMap(({ chain: { path } }, layer) =>
            Array.from({ length: path.length / 2 }, (_, i) => {
              const [dx, up] = [path[2 * i] - 60, 60 - path[2 * i + 1]];
              const [x, y] = [60 + dx * cos - up * sin, 60 - (dx * sin + up * cos)];
              const other = turned[layer].chain.path;
              return Math.hypot(other[2 * i] - x, other[2 * i + 1] - y);
            }),
          );
          expect(Math.max(...misses)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('have a color stop for each thread, sewn after all treatments, and hold every leg once', () => {
    for (const [name, ornament] of builtIn.ornaments) {
      const layers = inPlace(placed(name));
      expect(layers).toHaveLength(ornament.threads.length);
      const legs = layers.reduce((sum, { chain }) => sum + chain.from.length, 0);
      expect(legs).toBe(ornament.build({}).legs.length);
    }
    const { design } = dress(oneSeam, dressingOf({}, { ornaments: [placed('fan')] }), builtIn);
    expect(design.stops.map(({ kind }) => kind)).toEqual(['treatment', 'ornament', 'ornament']);
  });

  test('that there are not, or at a size out of range, are refused with their place', () => {
    expect(() => inPlace(placed('daisy'), placed('dasy'))).toThrow(
      expect.objectContaining({
        code: 'unknown-ornament',
        where: 'ornament 2',
        path: ['ornaments', 1],
        right: 'did you mean "daisy"?',
      }),
    );
    expect(() => inPlace(placed('daisy-petal', { parameters: { size: 30 } }))).toThrow(
      expect.objectContaining({
        code: 'size-out-of-range',
        where: 'ornament 1, daisy-petal size',
        path: ['ornaments', 0],
      }),
    );
  });
});
