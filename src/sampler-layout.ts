import { HOOPS } from './check/hoops.js';

/** Each treatment is sewn along a line of this length, mm. */
export const SAMPLE_LINE = 60;
/** Lines lie at least this far apart, mm; further where treatments are wide. */
export const SAMPLE_PITCH = 20;
/** Room for the number before a line, and for what reaches past its ends, mm. */
export const SAMPLE_NUMBER = 14;
const PAST = 6;

/** Where the lines of a sampler lie. */
export interface SamplerLayout {
  readonly width: number;
  readonly height: number;
  /** where lines begin, in the order of their numbers */
  readonly places: readonly (readonly [number, number])[];
}

/** Places in columns, in the smallest sewing field that takes them all, else as many as the largest takes. */
export function samplerLayout(count: number, pitch: number): SamplerLayout {
  const layouts = HOOPS.flatMap(({ width, height }) => [
    placesIn(width, height, pitch),
    placesIn(height, width, pitch),
  ]);
  const enough = layouts.find(({ places }) => places.length >= count);
  return enough ?? layouts.reduce((a, b) => (b.places.length > a.places.length ? b : a));
}

function placesIn(width: number, height: number, pitch: number): SamplerLayout {
  const column = SAMPLE_NUMBER + SAMPLE_LINE + PAST;
  const columns = Math.floor(width / column);
  const rows = Math.floor(height / pitch);
  const places = Array.from({ length: columns * rows }, (_, i): [number, number] => [
    Math.floor(i / rows) * column + SAMPLE_NUMBER,
    ((i % rows) + 0.5) * pitch,
  ]);
  return { width: columns * column, height: rows * pitch, places };
}
