import { batch, computed, effect, signal } from '@preact/signals';
import type { SeamDrawing } from '../../../src/formats/seam-drawing.js';
import type { Point } from '../../../src/geometry/point.js';
import type { Bare } from '../../core/messages.js';
import { become, whileTelling } from '../actions.js';
import { askAbout } from '../core-call.js';
import { newId } from '../keep.js';
import { isFitted } from '../view.js';
import { told, touched, type Work, work } from '../work.js';
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
/** Whether the stitches lie on the board too. */
export const showsThread = signal(true);
/** A line is held: it is where the hand has it, whatever the core tells meanwhile. */
export const isHeld = signal(false);

/** How a change of the lines is done. */
export interface Way {
  /** changes that follow each other by the same grip are undone together */
  readonly grip?: string | null;
  /**
   * the work that the lines are a change of; else the work as it is. While a line is dragged it is the work as it was when
   * the line was taken, so that it makes no difference by what way a line has come to where it is.
   */
  readonly from?: Work;
}

interface Waiting extends Way {
  readonly drawing: SeamDrawing;
}

const waiting: Waiting[] = [];
let isAtIt = false;
let atIt: Promise<void> = Promise.resolve();

/** The drawing becomes the block's. The maker sees it at once; the core makes a block of it meanwhile, and dresses that. */
export function draw(now: SeamDrawing, { grip = null, from }: Way = {}): void {
  draft.value = now;
  if (grip !== null && waiting.at(-1)?.grip === grip) waiting.pop();
  waiting.push({ drawing: now, grip, from });
  if (!isAtIt) atIt = drawWaiting();
}

/** Settled once the core has all that was drawn. */
export const allDrawn = (): Promise<void> => atIt;

async function drawWaiting(): Promise<void> {
  isAtIt = true;
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    const now = work.value;
    if (!now) break;
    const { drawing: lines, grip = null, from = now } = next;
    try {
      const dressing = await askAbout(from.file, 'redraw', { dressing: from.dressing, drawing: lines });
      // what was undone meanwhile is not done again
      if (work.value !== now) continue;
      become({ ...now, dressing }, grip);
      if (isHeld.value) void look();
    } catch (error) {
      draft.value = null;
      await whileTelling('Drawing', () => Promise.reject(error));
    }
  }
  isAtIt = false;
  void look();
}

/** The hand has let go: the lines are where the core has them, once it has them all. */
export function settleLines(): void {
  isHeld.value = false;
  if (!isAtIt) void look();
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
