import { signal } from '@preact/signals';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** How the block lies on the screen: pixels of the screen's own measure to the millimeter, and where its corner is. */
export interface View {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export const view = signal<View>({ scale: 4, x: 0, y: 0 });
/** Whether the block is kept in the middle, as large as it fits, until the maker moves it. */
export const isFitted = signal(true);

/** How large the table is, px. */
export const tableRoom = signal({ width: 0, height: 0 });

/** Nearer or further, about the middle of the table. */
export function nearer(factor: number): void {
  isFitted.value = false;
  view.value = zoomed(view.value, factor, tableRoom.value.width / 2, tableRoom.value.height / 2);
}

/** A place on the block comes to the middle of the table, near enough to be looked at; mm. */
export function lookAt([x, y]: readonly [number, number]): void {
  isFitted.value = false;
  const scale = Math.max(view.value.scale, NEAR);
  view.value = { scale, x: tableRoom.value.width / 2 - x * scale, y: tableRoom.value.height / 2 - y * scale };
}

/** What is looked at closely is so large, px to the millimeter. */
const NEAR = 12;
/** Room around the block where it is fitted, px. */
const MARGIN = 28;
const LEAST = 0.5;
const MOST = 60;

/** The block in the middle, as large as it fits. */
export function fitted({ width, height }: Size, room: Size): View {
  const across = (room.width - 2 * MARGIN) / width;
  const scale = Math.max(LEAST, Math.min(across, (room.height - 2 * MARGIN) / height));
  return { scale, x: (room.width - scale * width) / 2, y: (room.height - scale * height) / 2 };
}

/** The table is so large; a block that is kept in the middle is put there. What is so already is left alone. */
export function settle(room: Size, block: Size): void {
  const { width, height } = tableRoom.value;
  if (width !== room.width || height !== room.height) {
    tableRoom.value = { width: room.width, height: room.height };
  }
  if (!isFitted.value) return;
  const is = fitted(block, room);
  const { scale, x, y } = view.value;
  if (is.scale !== scale || is.x !== x || is.y !== y) view.value = is;
}

/** Nearer or further by a factor, while the place under (x, y) on the screen stays. */
export function zoomed(was: View, factor: number, x: number, y: number): View {
  const scale = Math.min(MOST, Math.max(LEAST, was.scale * factor));
  const by = scale / was.scale;
  return { scale, x: x - (x - was.x) * by, y: y - (y - was.y) * by };
}

export const panned = (was: View, dx: number, dy: number): View => ({ ...was, x: was.x + dx, y: was.y + dy });

/** A place on the screen as a place on the block, mm. */
export const onBlock = ({ scale, x, y }: View, px: number, py: number): [number, number] => [
  (px - x) / scale,
  (py - y) / scale,
];
