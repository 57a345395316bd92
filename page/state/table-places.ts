import { view } from './view.js';

type Place = readonly [number, number];

/** Where a place on the block lies on the table, px. */
export const onTable = ([x, y]: Place): [number, number] => [
  view.value.x + x * view.value.scale,
  view.value.y + y * view.value.scale,
];

/** The same as a style. */
export function styleAt(at: Place): { left: string; top: string } {
  const [x, y] = onTable(at);
  return { left: `${x}px`, top: `${y}px` };
}
