import type { Point } from '../../../src/geometry/point.js';
import { release } from '../actions.js';
import { isFitted, onBlock, panned, view, zoomed } from '../view.js';
import { aim, bare, chosenLine, chosenPatch, drawing, places, tool } from './board.js';
import { patchAt } from './fabrics.js';
import { leaveCross } from './key-cross.js';
import { addPlace, addStraight, addStroke } from './new-seam.js';
import { markPhoto, movePhoto } from './photo.js';
import { lineAt, snapped } from './snap.js';
import { stroke } from './stroke-signal.js';

/** What a finger or pen means lies within this, px of the page. */
const TOUCH = 16;
/** Moved less than this it was a touch, px. */
const STILL = 6;

export const reachMm = (): number => TOUCH / view.value.scale;

/** Touching, drawing, moving, pinching and the wheel on the board. Returns what takes it off again. */
export function handleBoard(board: HTMLElement): () => void {
  const down = new Map<number, Point>();
  let first: Point = [0, 0];
  let moved = 0;
  let isPan = false;
  const on = new AbortController();
  const listen = <K extends keyof HTMLElementEventMap>(
    kind: K,
    does: (event: HTMLElementEventMap[K]) => void,
  ) => board.addEventListener(kind, does, { signal: on.signal, passive: false });
  const px = (event: MouseEvent): Point => {
    const { left, top } = board.getBoundingClientRect();
    return [event.clientX - left, event.clientY - top];
  };
  const mm = ([x, y]: Point): Point => onBlock(view.value, x, y);

  listen('pointerdown', (event) => {
    board.setPointerCapture(event.pointerId);
    const at = px(event);
    down.set(event.pointerId, at);
    if (down.size > 1) {
      // two fingers look around; what the first began is nothing
      stroke.value = [];
      isPan = true;
      return;
    }
    first = at;
    moved = 0;
    isPan = event.button > 0 || tool.value === 'move' || tool.value === 'fabric';
    if (!isPan && tool.value !== 'photo') stroke.value = [mm(at)];
  });
  listen('pointermove', (event) => {
    const is = px(event);
    const was = down.get(event.pointerId);
    if (!was) {
      hover(mm(is));
      return;
    }
    moved = Math.max(moved, Math.hypot(is[0] - first[0], is[1] - first[1]));
    const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
    down.set(event.pointerId, is);
    const [dx, dy] = [is[0] - was[0], is[1] - was[1]];
    if (other) pinch(was, is, other);
    else if (moved < STILL) return;
    else if (isPan) {
      isFitted.value = false;
      view.value = panned(view.value, dx, dy);
    } else if (tool.value === 'photo') movePhoto(dx / view.value.scale, dy / view.value.scale);
    else {
      stroke.value = tool.value === 'curved' ? [...stroke.value, mm(is)] : [stroke.value[0], mm(is)];
      hover(mm(is));
    }
  });
  listen('pointerup', (event) => {
    const at = down.get(event.pointerId);
    down.delete(event.pointerId);
    if (!at || down.size > 0) return;
    const drawn = stroke.value;
    stroke.value = [];
    if (moved < STILL && event.button === 0) touch(mm(first));
    else if (!isPan && tool.value === 'straight') addStraight(mm(first), mm(at), reachMm());
    else if (!isPan && tool.value === 'curved') addStroke(drawn, reachMm());
    else release();
  });
  listen('pointercancel', (event) => {
    down.delete(event.pointerId);
    stroke.value = [];
  });
  listen('pointerleave', () => {
    aim.value = null;
  });
  listen('contextmenu', (event) => event.preventDefault());
  listen('wheel', (event) => {
    event.preventDefault();
    const [x, y] = px(event);
    isFitted.value = false;
    view.value = zoomed(view.value, Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0015)), x, y);
  });
  return () => on.abort();
}

function pinch(was: Point, is: Point, other: Point): void {
  isFitted.value = false;
  const apart = ([x, y]: Point) => Math.hypot(x - other[0], y - other[1]) || 1;
  const turned = zoomed(view.value, apart(is) / apart(was), (is[0] + other[0]) / 2, (is[1] + other[1]) / 2);
  view.value = panned(turned, (is[0] - was[0]) / 2, (is[1] - was[1]) / 2);
}

function hover(p: Point): void {
  leaveCross();
  const draws = tool.value === 'straight' || tool.value === 'curved';
  aim.value = draws && drawing.value ? snapped(p, drawing.value, reachMm()) : null;
}

function touch(p: Point): void {
  const now = drawing.value;
  if (!now || !bare.value) return;
  switch (tool.value) {
    case 'move':
      chosenLine.value = lineAt(p, now, reachMm());
      break;
    case 'fabric':
      chosenPatch.value = patchAt(bare.value.block, p);
      break;
    case 'photo':
      markPhoto(p);
      break;
    default:
      if (places.value.length === 0) chosenLine.value = null;
      addPlace(p, reachMm());
  }
}
