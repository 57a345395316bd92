import { float64s } from '../../geometry/flat.js';
import type { Scratch } from './known.js';
import type { Part } from './part.js';

/** Rounded to a micrometer, so that legs alike but for the noise of arithmetic are alike. */
export function lengthsOf(
  part: Part,
  shapeOf: Int32Array,
  legLength: Float64Array,
  { typicalLengths }: Scratch,
): Map<number, Float64Array> {
  if (shapeOf.length > 1) return meanLengths(part, shapeOf, legLength);
  const lengths = typicalLengths.get(shapeOf[0]) ?? meanLengths(part, shapeOf, legLength).get(shapeOf[0])!;
  typicalLengths.set(shapeOf[0], lengths);
  return new Map([[shapeOf[0], lengths]]);
}

function meanLengths(part: Part, shapeOf: Int32Array, legLength: Float64Array): Map<number, Float64Array> {
  const sums = new Map<number, { sum: Float64Array; times: number }>();
  let recent = -1;
  let entry: { sum: Float64Array; times: number } = { sum: new Float64Array(0), times: 0 };
  shapeOf.forEach((id, g) => {
    const first = part.start[g];
    if (id !== recent) {
      entry = sums.get(id) ?? { sum: float64s(part.start[g + 1] - first), times: 0 };
      sums.set(id, entry);
      recent = id;
    }
    entry.times++;
    for (let i = 0; i < entry.sum.length; i++) entry.sum[i] += legLength[part.legs[first + i]];
  });
  const means = new Map<number, Float64Array>();
  for (const [id, { sum, times }] of sums) {
    means.set(
      id,
      sum.map((length) => Math.round((length / times) * 1000) / 1000),
    );
  }
  return means;
}
