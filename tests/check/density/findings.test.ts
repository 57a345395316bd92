import { describe, expect, test } from 'vitest';
import { coverFindings } from '../../../src/check/density/band-cover.js';
import { density } from '../../../src/check/density/density.js';
import { densityFindings } from '../../../src/check/density/findings.js';
import { LIMITS } from '../../../src/check/density/limits.js';
import type { SewnStitches } from '../../../src/check/density/sewn-stitches.js';

type XY = readonly [number, number];

function sewn(lines: readonly (readonly XY[])[]): SewnStitches {
  const ends: number[] = [];
  const stops = lines.map((line) => {
    const from = ends.length / 4;
    ends.push(...line.slice(1).flatMap((to, i) => [...line[i], ...to]));
    return { from, to: ends.length / 4, width: 0.4 };
  });
  return { ends: Float64Array.from(ends), stops };
}

/** Satin across, its rows `spacing` mm apart. */
const satin = (x: number, y: number, length: number, width: number, spacing: number): XY[] =>
  Array.from({ length: Math.round(length / spacing) }, (_, i) => [x + i * spacing, y + (i % 2 ? width : 0)]);
/** There and back over one line. */
const passes = (x: number, y: number, length: number, times: number): XY[] =>
  Array.from({ length: times + 1 }, (_, i) => [x + (i % 2 ? length : 0), y]);

const named = (lines: readonly unknown[], existing: readonly number[] = []) =>
  lines.map((_, i) => ({ title: `Row ${i + 1}`, isExisting: existing.includes(i) }));
const found = (lines: readonly (readonly XY[])[], existing: readonly number[] = [], limits = LIMITS.firm) => {
  const stitches = sewn(lines);
  return densityFindings(stitches, density(stitches), named(lines, existing), limits);
};

describe('what is said of dense stitching', () => {
  test('satin of the usual spacing is no fault: 4 mm wide at 0.4 mm it has below 2 holes a mm2 (common practice)', () => {
    const lines = [satin(0, 0, 40, 4, 0.4)];
    expect(density(sewn(lines)).whole.holesPerMm2.mean).toBeLessThan(2);
    expect(found(lines)).toEqual([]);
  });

  test('three passes of thread crossing three are no fault, as threads of a herringbone cross', () => {
    const across = passes(0, 0, 6, 3).map(([x, y]): XY => [3 + y, x - 3]);
    expect(found([passes(0, 0, 6, 3), across])).toEqual([]);
  });

  test('satin at 0.06 mm is too dense, and told once for all of it', () => {
    const findings = found([satin(0, 0, 40, 2, 0.06)]);
    expect(findings.map(({ code }) => code).sort()).toEqual(['deep-thread', 'dense-holes']);
    for (const { level, stop, message } of findings) {
      expect(level).not.toBe('note');
      expect(stop).toBe(1);
      expect(message).toMatch(/^stop 1 \(row 1\): .*; .*/);
    }
  });

  test('places with the same cause are gathered, told by the worst, and lie where it lies', () => {
    const lines = [[...passes(0, 0, 3, 9), ...passes(30, 0, 3, 13)]];
    const [finding, ...others] = found(lines).filter(({ code }) => code === 'shared-hole');
    expect(others).toEqual([]);
    expect(finding.message).toContain('7 times through one hole');
    expect(Math.abs(finding.at![0] - 31.5)).toBeLessThan(2);
  });

  test('a stop that came with the block is not blamed on a treatment, nor is the other way about', () => {
    const dense = satin(0, 0, 20, 2, 0.06);
    expect(found([dense], [0])[0].message).toContain('came with the block');
    const half = satin(0, 0, 20, 2, 0.11);
    const both = found([half, half.map(([x, y]): XY => [x + 0.05, y])], [0]);
    const [mixed, ...others] = both.filter(({ message }) => !message.includes('came with the block; sew'));
    expect(mixed.message).toMatch(/^stop 1 \(row 1\) and stop 2 \(row 2\): .*keep the treatment clear/);
    expect(others.every(({ message }) => message.includes('keep the treatment clear'))).toBe(true);
  });

  test('fine fabric bears fewer piercings in a hole than firm (common practice)', () => {
    const lines = [passes(0, 0, 3, 10)];
    const code = 'shared-hole';
    expect(found(lines, [], LIMITS.firm).filter((one) => one.code === code)).toEqual([]);
    expect(found(lines, [], LIMITS.fine).filter((one) => one.code === code)).toHaveLength(1);
  });

  test('a seam covered by more than 45 % looks machine-made, at 10 to 25 % hand-made (common practice)', () => {
    const told = (spacing: number) => {
      const stitches = sewn([satin(0, 0, 40, 6, spacing)]);
      return coverFindings(density(stitches), [{ seam: 3, stops: [0], areaMm2: 240 }], 0.45);
    };
    expect(told(2)).toEqual([]);
    const [finding] = told(0.5);
    expect(finding).toMatchObject({ level: 'note', code: 'full-cover', seam: 3, stop: 1 });
  });
});
