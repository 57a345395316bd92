import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { splitAfter } from '../../src/design/existing.js';
import { toRecords, writeDesign } from '../../src/design/write-design.js';
import { readDst } from '../../src/formats/dst-read.js';
import { stopsOf } from '../../src/formats/stops.js';
import { InputError } from '../../src/input-error.js';
import { littleNumbers, littleRecords, littleSummary } from '../formats/little-dst.js';
import { runArbitrary, stop } from './designs.js';

/** Any records a file may hold, oddly spelled ones too; three bytes each, none of them the end mark. */
const recordArbitrary = fc
  .tuple(
    fc.integer({ min: 0, max: 255 }),
    fc.integer({ min: 0, max: 255 }),
    fc.integer({ min: 0, max: 15 }),
    fc.constantFrom(0x00, 0x00, 0x00, 0x80, 0xc0, 0x40),
  )
  .map(([a, b, digits, kind]) => [a, b, kind | (digits << 2) | 3])
  .filter((bytes) => bytes.join() !== '0,0,243');
const fileArbitrary = fc.array(recordArbitrary, { maxLength: 50 }).map((records) => {
  const header = new Uint8Array(512).fill(0x20);
  header.set([0x4c, 0x41, 0x3a]);
  return Uint8Array.of(...header, ...records.flat(), 0, 0, 0xf3);
});
const openedArbitrary = fc.record({
  bytes: fileArbitrary,
  at: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
  runs: fc.array(fc.array(runArbitrary, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 }),
  origin: fc.tuple(fc.constantFrom(-65, 0, 12.3), fc.constantFrom(-90, 0, 0.07)),
});

function opened(
  bytes: Uint8Array,
  at: number,
  runs: Parameters<typeof stop>[0][],
  origin: readonly [number, number],
) {
  const file = readDst(bytes, 'block.dst');
  const stops = stopsOf(file);
  const afterStop = 1 + Math.floor(at * stops.length);
  const { before, after, needle } = splitAfter(file, afterStop);
  const design: Design = { before, after, stops: runs.map((r) => stop(r)), origin, name: 'block' };
  return { file, stops, afterStop, before, after, needle, design };
}

describe('new stops in an existing stitch file', () => {
  it('leave the original byte for byte when their records are taken out again, the header apart', () => {
    fc.assert(
      fc.property(openedArbitrary, ({ bytes, at, runs, origin }) => {
        const { before, after, design } = opened(bytes, at, runs, origin);
        const written = writeDesign(design);
        const inserted = written.length - bytes.length;
        expect(inserted % 3).toBe(0);
        const from = 512 + before.records.length;
        expect([...written.slice(from, from + 3)], 'the first new record is a color change').toEqual([
          0, 0, 0xc3,
        ]);
        const rest = [...written.slice(512, from), ...written.slice(from + inserted)];
        expect(rest).toEqual([...bytes.slice(512)]);
        expect(written.length - from - inserted - 3).toBe(after?.records.length ?? 0);
      }),
    );
  });

  it('leave the needle where it was, so that what follows is sewn in its old place', () => {
    fc.assert(
      fc.property(openedArbitrary, ({ bytes, at, runs, origin }) => {
        const { stops, afterStop, design } = opened(bytes, at, runs, origin);
        const now = stopsOf(readDst(writeDesign(design), 'x'));
        expect(now).toHaveLength(stops.length + runs.length);
        const kept = [...now.slice(0, afterStop), ...now.slice(afterStop + runs.length)];
        expect(kept.map((s) => s.runs)).toEqual(stops.map((s) => s.runs));
      }),
    );
  });

  it('make the header say what the whole file holds', () => {
    fc.assert(
      fc.property(openedArbitrary, ({ bytes, at, runs, origin }) => {
        const written = writeDesign(opened(bytes, at, runs, origin).design);
        expect(littleNumbers(written)).toEqual(littleSummary(littleRecords(written)));
      }),
    );
  });

  it('are trimmed before the needle goes back, however short the way, and then the old change record follows', () => {
    const file = readDst(Uint8Array.of(...header(), 0x01, 0, 3, 0, 0, 0xc3, 0x01, 0, 3, 0, 0, 0xf3), 'x');
    const { before, after } = splitAfter(file, 1);
    const design = (x: number): Design => ({
      before,
      after,
      stops: [
        stop([
          [
            [x, 0],
            [x + 1, 0],
          ],
        ]),
      ],
      origin: [0, 0],
      name: 'x',
    });
    const kinds = (d: Design) =>
      littleRecords(writeDesign(d))
        .map(({ kind }) => kind[0])
        .join('');
    expect(kinds(design(10))).toBe('scjsjjjcs');
    expect(kinds(design(5))).toBe('scjsjjjcs');
  });

  it('behind the last stop need no way back', () => {
    const file = readDst(Uint8Array.of(...header(), 0x01, 0, 3, 0, 0, 0xf3), 'x');
    const { before, after } = splitAfter(file, 1);
    expect(after).toBeNull();
    const records = toRecords({
      before,
      after,
      stops: [
        stop([
          [
            [9, 0],
            [10, 0],
          ],
        ]),
      ],
      origin: [0, 0],
      name: 'x',
    });
    expect(records.length / 3).toBe(4);
  });
});

describe('a stitch file opened after a stop', () => {
  it('and closed again with nothing new in it has the records it had', () => {
    fc.assert(
      fc.property(openedArbitrary, ({ bytes, at }) => {
        const { file, design } = opened(bytes, at, [], [0, 0]);
        expect(toRecords(design)).toEqual(file.records);
      }),
    );
  });

  it('gives both parts whole: the change record goes with what follows', () => {
    fc.assert(
      fc.property(fileArbitrary, (bytes) => {
        const file = readDst(bytes, 'x');
        const stops = stopsOf(file);
        for (let n = 1; n <= stops.length; n++) {
          const { before, after, needle } = splitAfter(file, n);
          expect([...before.records, ...(after?.records ?? [])]).toEqual([...file.records]);
          expect(before.stops + (after?.stops ?? 0)).toBe(stops.length);
          expect(after === null).toBe(n === stops.length);
          if (after) expect(after.records[2] & 0xc0).toBe(0xc0);
          const moves = littleRecords(Uint8Array.of(...header(), ...before.records, 0, 0, 0xf3));
          expect(needle[0]).toBeCloseTo(moves.reduce((x, { dx }) => x + dx, 0) / 10, 9);
          expect(needle[1]).toBeCloseTo(moves.reduce((y, { dy }) => y - dy, 0) / 10, 9);
        }
      }),
    );
  });

  it('has no stop 0, none past the last, none in between', () => {
    const file = readDst(Uint8Array.of(...header(), 0, 0, 0xc3, 0, 0, 0xc3, 0, 0, 0xf3), 'x');
    for (const n of [0, -1, 4, 1.5, Number.NaN]) {
      expect(() => splitAfter(file, n, '--after')).toThrow(InputError);
      expect(() => splitAfter(file, n, '--after')).toThrow(
        `--after: there is no color stop ${n}; it has color stops 1 to 3`,
      );
    }
  });
});

function header(): Uint8Array {
  const bytes = new Uint8Array(512).fill(0x20);
  bytes.set([0x4c, 0x41, 0x3a]);
  return bytes;
}
