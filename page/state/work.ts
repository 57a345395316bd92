import { computed, signal } from '@preact/signals';
import type { Role, StopRole } from '../../src/block/roles/role.js';
import type { Dressing } from '../../src/formats/dressing.js';
import type { Complaint, Figure, GivenFile, Line, Offered, Picture } from '../core/messages.js';
import type { Photo } from './drawing/photo.js';
import { begun, type History } from './history.js';

/** A piece of work as it is kept: the dressing, and the file that its block is read from, where it is not in it. */
export interface Work {
  /** tells it from other pieces of work that are kept */
  readonly id: string;
  readonly dressing: Dressing;
  readonly file: GivenFile | null;
  /** of a stitch file: what each color stop was taken for */
  readonly roles: readonly StopRole[] | null;
  /** which of them the maker named herself */
  readonly named: readonly (readonly [number, Role])[];
  /** why each line got what it got */
  readonly why: readonly (readonly [Line, string])[];
  /** stops that are not shown, by their titles */
  readonly hidden: readonly string[];
  /** what lies behind the drawing of its seams */
  readonly photo?: Photo;
}

export const history = signal<History<Work | null>>(begun(null));
export const work = computed(() => history.value.now);
export const canUndo = computed(() => history.value.past.some(Boolean));
export const canRedo = computed(() => history.value.future.length > 0);

/** The work as it was last dressed, and drawn. */
export const picture = signal<Picture | null>(null);
/** The work that the picture is of: while it is another one, the core is at it. */
export const pictured = signal<Work | null>(null);
/** Something is being worked on that takes a while, told to the maker. */
export const busy = signal<string | null>(null);
export const complaint = signal<Complaint | null>(null);
/** What just happened, for those who do not see it. */
export const told = signal('');
/** The line that was touched. */
export const touched = signal<Line | null>(null);
export const offers = signal<readonly Offered[]>([]);
export const figures = signal<readonly Figure[]>([]);
