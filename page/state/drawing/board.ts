import { batch, computed, effect, signal } from '@preact/signals';
import type { SeamDrawing } from '../../../src/formats/seam-drawing.js';
import type { Point } from '../../../src/geometry/point.js';
import type { Bare } from '../../core/messages.js';
import { become, whileTelling } from '../actions.js';
import { askAbout } from '../core-call.js';
import { newId } from '../keep.js';
import { isFitted } from '../view.js';
import { told, touched, work } from '../work.js';
import type { Snapped } from './snap.js';

export type Tool = 'move' | 'straight' | 'curved' | 'fabric' | 'photo';

/** Whether seams are being drawn, and what with. */
export const isDrawing = signal(false);
export const tool = signal<Tool>('move');
/** The block as drawn, and its lines, as they were last told by the core. */
export const bare = signal<Bare | null>(null);
/** The lines while they are being changed, until the core has them. */
export const draft = signal<SeamDrawing | null>(null);
export const drawing = computed(() => draft.value ?? bare.value?.drawing ?? null);
export const chosenLine = signal<number | null>(null);
export const chosenPatch = signal<number | null>(null);
/** Places of the line that is being drawn. */
export const places = signal<readonly Point[]>([]);
/** Where the next place would be. */
export const aim = signal<Snapped | null>(null);
/** A line is held: what the core tells meanwhile is of no interest. */
export const isHeld = signal(false);

interface Waiting {
  readonly drawing: SeamDrawing;
  readonly grip: string | null;
}

const waiting: Waiting[] = [];
let isAtIt = false;

/**
 * The drawing becomes the block's. The maker sees it at once; the core makes a block of it meanwhile.
 * @param grip changes that follow each other by the same grip are undone together
 */
export function draw(now: SeamDrawing, grip: string | null = null): void {
  draft.value = now;
  if (grip !== null && waiting.at(-1)?.grip === grip) waiting.pop();
  waiting.push({ drawing: now, grip });
  if (!isAtIt) void drawWaiting();
}

async function drawWaiting(): Promise<void> {
  isAtIt = true;
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    const now = work.value;
    if (!now) break;
    const { drawing: lines, grip } = next;
    try {
      const dressing = await askAbout(now.file, 'redraw', { dressing: now.dressing, drawing: lines });
      // what was undone meanwhile is not done again
      if (work.value !== now) continue;
      become({ ...now, dressing, file: null, roles: null, named: [] }, grip);
    } catch (error) {
      draft.value = null;
      await whileTelling('Drawing', () => Promise.reject(error));
    }
  }
  isAtIt = false;
  if (!isHeld.value && work.value) void look();
}

/** Asks the core for the block as it is now. */
async function look(): Promise<void> {
  const now = work.value;
  if (!now) return;
  const found = await askAbout(now.file, 'bare', { dressing: now.dressing }).catch(() => null);
  if (work.value !== now || !found) return;
  batch(() => {
    bare.value = found;
    if (!isAtIt && !isHeld.value) draft.value = null;
  });
}

/** Keeps the block that is drawn on as the work is. */
export function keepBare(): void {
  let id: string | null = null;
  effect(() => {
    const now = work.value;
    if (!isDrawing.value || !now) return;
    if (now.id !== id) letGoOfLines();
    id = now.id;
    void look();
  });
}

function letGoOfLines(): void {
  batch(() => {
    bare.value = null;
    draft.value = null;
    chosenLine.value = null;
    chosenPatch.value = null;
    places.value = [];
    aim.value = null;
  });
}

export function takeTool(next: Tool): void {
  batch(() => {
    tool.value = next;
    places.value = [];
    aim.value = null;
    if (next !== 'move') chosenLine.value = null;
    if (next !== 'fabric') chosenPatch.value = null;
  });
}

export function beginDrawing(): void {
  batch(() => {
    touched.value = null;
    letGoOfLines();
    isDrawing.value = true;
  });
  told.value = 'Drawing seams';
}

export function endDrawing(): void {
  batch(() => {
    letGoOfLines();
    isDrawing.value = false;
  });
  told.value = 'The block is on the table again';
}

/** A block of its own, with nothing on it but its edge; mm. */
export const beginEmpty = (width: number, height: number) =>
  whileTelling('Laying out the cloth', async () => {
    const dressing = await askAbout(null, 'empty', { width, height });
    batch(() => {
      touched.value = null;
      isFitted.value = true;
      become({ id: newId(), dressing, file: null, roles: null, named: [], why: [], hidden: [] });
      isDrawing.value = true;
      takeTool('straight');
    });
    told.value = 'An empty block lies on the table';
  });
