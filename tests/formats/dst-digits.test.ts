import { describe, expect, it } from 'vitest';
import { STITCH_CODE, X_CODE, Y_CODE } from '../../src/formats/dst-digits.js';
import { decodeRecords } from '../../src/formats/dst-records.js';
import { DstWriter } from '../../src/formats/dst-write.js';
import { littleRecord } from './little-dst.js';

/**
 * Balanced ternary by repeated division with a remainder of -1, 0 or 1 (the usual conversion; Knuth, The Art of Computer
 * Programming vol. 2, section 4.1, describes the system). Highest digit first, T for -1.
 */
function balancedTernary(value: number): string {
  let digits = '';
  for (let rest = value; rest !== 0; ) {
    const digit = ((((rest + 1) % 3) + 3) % 3) - 1;
    digits = 'T01'[digit + 1] + digits;
    rest = (rest - digit) / 3;
  }
  return digits || '0';
}

/** The same digits read off a record's bits. */
function spelled(code: number, plusBits: number[], minusBits: number[]): string {
  const digits = plusBits.map((plus, i) => {
    const up = (code >> plus) & 1;
    const down = (code >> minusBits[i]) & 1;
    expect(up + down, 'a digit is not both + and -').toBeLessThan(2);
    return 'T01'[up - down + 1];
  });
  return digits
    .reverse()
    .join('')
    .replace(/^0+(?=.)/, '');
}

describe('the digits of a move', () => {
  it('the conversion agrees with published examples', () => {
    // Hayes, "Third Base", American Scientist 89(6), 2001, and a printed table; Knuth's rule for negation
    const published: [number, string][] = [
      [19, '1T01'],
      [12, '110'],
      [13, '111'],
      [14, '1TTT'],
      [-14, 'T111'],
      [2, '1T'],
      [4, '11'],
      [5, '1TT'],
      [6, '1T0'],
      [7, '1T1'],
      [8, '10T'],
      [11, '11T'],
      [16, '1TT1'],
      [-8, 'T01'],
    ];
    for (const [value, digits] of published) expect(balancedTernary(value)).toBe(digits);
  });

  it('are the balanced ternary representation, on both axes, for all 243 moves', () => {
    expect(X_CODE).toHaveLength(243);
    for (let d = -121; d <= 121; d++) {
      expect(spelled(X_CODE[d + 121], [16, 8, 18, 10, 2], [17, 9, 19, 11, 3]), `x ${d}`).toBe(
        balancedTernary(d),
      );
      expect(spelled(Y_CODE[d + 121], [23, 15, 21, 13, 5], [22, 14, 20, 12, 4]), `y ${d}`).toBe(
        balancedTernary(d),
      );
    }
  });

  it('move the axes apart from each other and from the kind of record', () => {
    let x = 0;
    let y = 0;
    for (let d = 0; d < 243; d++) {
      x |= X_CODE[d];
      y |= Y_CODE[d];
    }
    expect(x & y).toBe(0);
    expect((x | y) & 0xc3).toBe(0);
    expect(x | y | 0xc3).toBe(0xffffff);
    expect(STITCH_CODE).toBe(3);
  });

  it('every displacement comes back, as a stitch and as a jump, by our reader and by another', () => {
    const writer = new DstWriter(8);
    const given: [string, number, number][] = [];
    for (let dx = -121; dx <= 121; dx++) {
      for (let dy = -121; dy <= 121; dy++) {
        const jump = (dx + dy) % 2 !== 0;
        if (jump) writer.jump(dx, dy);
        else writer.stitch(dx, dy);
        given.push([jump ? 'jump' : 'stitch', dx, dy]);
      }
    }
    const records = writer.records();
    const { kinds, moves } = decodeRecords(records);
    given.forEach(([kind, dx, dy], i) => {
      const little = littleRecord(records, 3 * i);
      if (little.kind !== kind || little.dx !== dx || little.dy !== dy)
        expect(little).toEqual({ kind, dx, dy });
      const ours = [['stitch', 'jump', 'change'][kinds[i]], moves[2 * i], moves[2 * i + 1]];
      if (ours.join() !== [kind, dx, dy].join()) expect(ours).toEqual([kind, dx, dy]);
    });
    expect(kinds).toHaveLength(243 * 243);
  });

  it('longer moves, halves of a step and no numbers are refused', () => {
    const writer = new DstWriter();
    for (const bad of [122, -122, 0.5, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => writer.stitch(bad, 0)).toThrow(RangeError);
      expect(() => writer.jump(0, bad)).toThrow(RangeError);
    }
    expect(writer.records()).toHaveLength(0);
  });
});
