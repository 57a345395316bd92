import { effect, signal } from '@preact/signals';
import type { BlockSource } from '../../src/formats/dressing.js';
import type { Line, MeetingPlace } from '../core/messages.js';
import { become, whileTelling } from './actions.js';
import { askAbout } from './core-call.js';
import { lengthOf, placeAlong } from './handle-places.js';
import { lineNear, pointsOf } from './lines-near.js';
import { picture, pictured, touched, work } from './work.js';

/** Where the touched line meets others. */
export const meetings = signal<readonly MeetingPlace[]>([]);

/** Learns where a line meets others, as the block is now. */
export async function learnMeetings(line: Line): Promise<void> {
  const now = work.value;
  if (!now) return;
  const found = await askAbout(now.file, 'meetings', { dressing: now.dressing, line }).catch(() => []);
  if (touched.value === line) meetings.value = found;
}

/** The junction of the touched line whose choices stand on the table, as the dressing tells its place; null for none. */
export const openMeeting = signal<MeetingPlace['at'] | null>(null);

export const isOpenAt = (at: MeetingPlace['at']): boolean => {
  const open = openMeeting.value;
  return open !== null && Math.hypot(open[0] - at[0], open[1] - at[1]) <= SAME_JUNCTION;
};

/** What the maker says of a junction: one seam runs through; two are one line, or one is two. Plain numbers. */
export interface Word {
  readonly through?: number | null;
  readonly line?: { readonly join: readonly [number, number] } | { readonly split: number } | null;
}

/** The block's source with the maker's word on a junction in the place of what she said of it before. */
export function withWord(source: BlockSource, { at, said }: MeetingPlace, word: Word): BlockSource {
  const { join = [], split = [], ...rest } = source;
  const isElsewhere = (one: { readonly at: readonly [number, number] }) =>
    Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) > SAME_JUNCTION;
  const { through = said.through, line = lineSaid(said) } = word;
  const joins = [...join.filter(isElsewhere), ...(line && 'join' in line ? [{ at, seams: line.join }] : [])];
  const splits = [
    ...split.filter(isElsewhere),
    ...(line && 'split' in line ? [{ at, seam: line.split }] : []),
  ];
  return {
    ...rest,
    through: [...source.through.filter(isElsewhere), ...(through !== null ? [{ at, seam: through }] : [])],
    ...(joins.length > 0 && { join: joins }),
    ...(splits.length > 0 && { split: splits }),
  };
}

/** Words within this of each other are on one junction, mm: nearer ones are never found apart. */
const SAME_JUNCTION = 0.5;

function lineSaid({ join, split }: MeetingPlace['said']): Word['line'] {
  if (join) return { join };
  return split === null ? null : { split };
}

/**
 * The maker says something of a junction: the block is read anew, and its dressing goes along. Seams may be counted anew by
 * that: the touched one is the one that lies where it lay, next to the junction.
 */
export async function sayOf(meeting: MeetingPlace, word: Word): Promise<void> {
  const line = touched.value;
  const open = openMeeting.value;
  const near = line === null ? null : besideMeeting(line, meeting);
  await rereadAs('Parting and joining seams', (source) => withWord(source, meeting, word));
  if (!near) return;
  await dressedNow();
  const there = picture.value && lineNear(picture.value.block, near, SAME_JUNCTION);
  if (touched.value !== line || there === null || there === line) return;
  touched.value = there;
  openMeeting.value = open;
}

/** A place on a line so far from a junction that no other line is as near, mm. */
const BESIDE = 4;

function besideMeeting(line: Line, { along }: MeetingPlace): readonly [number, number] | null {
  const points = picture.value && pointsOf(picture.value.block, line);
  if (!points) return null;
  const length = lengthOf(points);
  const by = Math.min(BESIDE, length / 3);
  return placeAlong(points, along * length + (along > 0.5 ? -by : by)).at;
}

/** When the picture is of the work as it is. */
const dressedNow = (): Promise<void> =>
  new Promise((resolve) => {
    const stop = effect(() => {
      if (pictured.value !== work.value) return;
      resolve();
      queueMicrotask(() => stop());
    });
  });

/** The block is read in another way. */
export const rereadAs = (what: string, edit: (source: BlockSource) => BlockSource) =>
  whileTelling(what, async () => {
    const now = work.value;
    if (!now) return;
    const block = edit(now.dressing.block);
    const dressing = await askAbout(now.file, 'reread', { dressing: now.dressing, block });
    become({ ...now, dressing });
  });
