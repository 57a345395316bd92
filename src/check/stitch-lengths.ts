import type { Finding } from '../finding.js';
import type { SewnStitches } from './density/sewn-stitches.js';

/** Shorter stitches than this may break thread and needle, mm; ties are longer. Common practice. */
const SHORTEST = 0.4;
/** Longer ones snag on anything that is handled, mm. Common practice, for wall pieces. */
const LONGEST = 9;
/** Machines count in steps of 0.1 mm, which may take half of one away, or add it. */
const ROUNDING = 0.075;

/** Lengths of all stitches, mm; zeros where there are none. */
export interface StitchLengths {
  readonly min: number;
  readonly max: number;
  readonly mean: number;
}

export function stitchLengths({ ends }: SewnStitches): StitchLengths {
  let [min, max, sum] = [Number.POSITIVE_INFINITY, 0, 0];
  for (let i = 0; i < ends.length; i += 4) {
    const length = lengthOf(ends, i);
    if (length < min) min = length;
    if (length > max) max = length;
    sum += length;
  }
  return ends.length === 0 ? { min: 0, max: 0, mean: 0 } : { min, max, mean: (4 * sum) / ends.length };
}

/** Stops with stitches so short that they may break thread, or so long that they snag: one finding for each kind. */
export function lengthFindings({ ends, stops }: SewnStitches): Finding[] {
  const kinds = [
    {
      code: 'short-stitches',
      is: (length: number) => length < SHORTEST - ROUNDING,
      told: (count: number) => `${stitches(count)} shorter than ${SHORTEST} mm, which may break the thread`,
      right: 'larger details, or a larger size, sew better',
    },
    {
      code: 'long-stitches',
      is: (length: number) => length > LONGEST + ROUNDING,
      told: (count: number) =>
        `${stitches(count)} longer than ${LONGEST} mm, which snag on things that are handled`,
      right: 'a smaller size sews them shorter',
    },
  ];
  return kinds.flatMap(({ code, is, told, right }): Finding[] => {
    const counts = stops.map(({ from, to }) => {
      let count = 0;
      for (let i = 4 * from; i < 4 * to; i += 4) if (is(lengthOf(ends, i))) count++;
      return count;
    });
    const all = counts.reduce((sum, count) => sum + count, 0);
    if (all === 0) return [];
    const most = counts.indexOf(Math.max(...counts));
    const others = counts.filter((count) => count > 0).length - 1;
    const more = others > 0 ? ` (and ${all - counts[most]} in ${others} more)` : '';
    const message = `stop ${most + 1}: ${told(counts[most])}${more}; ${right}`;
    return [{ level: 'warning', code, message, stop: most + 1 }];
  });
}

const stitches = (count: number) => (count === 1 ? 'one stitch' : `${count} stitches`);
const lengthOf = (ends: Float64Array, i: number) =>
  Math.hypot(ends[i + 2] - ends[i], ends[i + 3] - ends[i + 1]);
