/** Points as they stand in a text: whole micrometers, each from the one before. */
interface Packed {
  readonly microns: readonly number[];
}

/** A record with points in it as a text. Points are to be given in mm, to whole micrometers; all other numbers stand as they are. */
export function packed(record: unknown): string {
  return JSON.stringify(record, (_, value: unknown) => {
    if (value instanceof Int32Array) return { whole: [...value] };
    return value instanceof Float64Array ? ({ microns: steps(value) } satisfies Packed) : value;
  });
}

/** The record that a text was made of. */
export const unpacked = <T>(text: string): T =>
  JSON.parse(text, (_, value: { microns?: readonly number[]; whole?: readonly number[] } | null) => {
    if (Array.isArray(value?.whole)) return Int32Array.from(value.whole);
    return Array.isArray(value?.microns) ? points(value.microns) : value;
  }) as T;

function steps(xy: Float64Array): number[] {
  const was = [0, 0];
  return Array.from(xy, (value, i) => {
    const micron = Math.round(value * 1000);
    const step = micron - was[i % 2];
    was[i % 2] = micron;
    return step;
  });
}

function points(microns: readonly number[]): Float64Array {
  const at = [0, 0];
  return Float64Array.from(microns, (step, i) => {
    at[i % 2] += step;
    return at[i % 2] / 1000;
  });
}
