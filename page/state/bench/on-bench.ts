import { batch, computed, signal } from '@preact/signals';
import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import type { Benched, BenchFinding, OwnStitch } from '../../core/bench-messages.js';
import { begun, changed, type History, letGo, redone, undone } from '../history.js';
import { told } from '../work.js';

/** A stitch on the bench: the record of its file, and the name that the file will have. */
export interface Draft {
  /** tells it from others that are kept, whatever they are called */
  readonly id: string;
  readonly name: string;
  readonly record: StitchRecord;
}

/** Whether the bench is shown in the place of the block. */
export const isBenchOpen = signal(false);
export const benchHistory = signal<History<Draft | null>>(begun(null));
export const draft = computed(() => benchHistory.value.now);
export const canUndoStitch = computed(() => benchHistory.value.past.length > 0);
export const canRedoStitch = computed(() => benchHistory.value.future.length > 0);

/** The point that is chosen, by its name as it lies there: of copies `tip[1]`. */
export const chosen = signal<string | null>(null);
/** The stitch as it was last built; where it cannot be built, the picture before and what is wrong now. */
export const benched = signal<Benched | null>(null);
/** All that is wrong or worth a look; null while it is being looked for. */
export const benchFound = signal<readonly BenchFinding[] | null>(null);
/** The maker's own stitches, by name. */
export const ownStitches = signal<readonly OwnStitch[]>([]);

/** @param grip changes that follow each other by the same grip are undone together */
export function changeStitch(edit: (record: StitchRecord) => StitchRecord, grip: string | null = null): void {
  const now = draft.value;
  if (!now) return;
  const record = edit(now.record);
  if (record !== now.record) benchHistory.value = changed(benchHistory.value, { ...now, record }, grip);
}

export const releaseStitch = (): void => {
  benchHistory.value = letGo(benchHistory.value);
};

export function undoStitch(): void {
  if (!canUndoStitch.value) return;
  benchHistory.value = undone(benchHistory.value);
  told.value = 'Undone';
}

export function redoStitch(): void {
  if (!canRedoStitch.value) return;
  benchHistory.value = redone(benchHistory.value);
  told.value = 'Done again';
}

/** The stitch on the bench as it was laid there: as long as it is that, there is nothing to lose. */
export const laid = signal<StitchRecord | null>(null);

/** A stitch is laid on the bench; what was there before is one step back. */
export function layOnBench(next: Draft): void {
  batch(() => {
    chosen.value = null;
    laid.value = next.record;
    benchHistory.value = draft.value ? changed(benchHistory.value, next) : begun(next);
  });
}

/** The stitch goes by another title; its file is renamed with it, so that one saved before stays as it is. */
export function renameStitch(title: string, nameOf: (title: string) => string): void {
  const now = draft.value;
  if (!now || title.trim() === '' || title === now.record.title) return;
  const next = { ...now, name: nameOf(title), record: { ...now.record, title: title.trim() } };
  benchHistory.value = changed(benchHistory.value, next);
}

/** The file of the stitch on the bench is called otherwise; its title stays. */
export function renameFile(name: string): void {
  const now = draft.value;
  if (now) benchHistory.value = changed(benchHistory.value, { ...now, name });
}
