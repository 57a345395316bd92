import type { Seam, SeamMap } from '../../src/block/seam-map.js';
import { referenceTo, resized, seamOf } from '../../src/fit/seam-reference.js';
import { onSeam } from '../../src/fit/turned-round.js';
import type { Dressing, SeamReference, Treatment } from '../../src/formats/dressing.js';
import { cumulativeLength } from '../../src/geometry/polyline.js';
import { pointAtLength } from '../../src/geometry/polyline-part.js';
import { footOn } from './drawn-lines.js';
import type { Line } from './messages.js';

/** Two maps of one block have their lines in the same places: so far apart they are others, mm. */
const SAME_PLACE = 0.05;
/** A line is looked at in so many places. */
const LOOKS = 16;

/**
 * A dressing whose seams are counted anew because the lines are parted or joined in other places; they lie where they lay.
 * What was one seam and is two now is worked alike on both; what was two and is one has the work of the longer.
 */
export function renumbered(dressing: Dressing, from: SeamMap, to: SeamMap): Dressing {
  const { treatments, bare, order } = dressing;
  const was = new Map<Line, Treatment>();
  const lost: Treatment[] = [];
  references(from, treatments).forEach((line, t) => {
    if (line === null) lost.push(treatments[t]);
    else was.set(line, treatments[t]);
  });
  const bareBefore = new Set(
    references(
      from,
      (bare ?? []).map((seam) => ({ seam })),
    ),
  );
  const before = to.seams.map((seam) => lineBefore(from, seam));
  const worked = to.seams.flatMap((seam, i): Treatment[] => {
    const known = before[i] === null ? undefined : was.get(before[i]);
    return known ? [{ ...onSeam(known, known.seam, seam), seam: referenceTo(seam) }] : [];
  });
  const edge = was.get('outline');
  const left = to.seams.filter((_, i) => before[i] !== null && bareBefore.has(before[i])).map(referenceTo);
  const now = (line: Line): Line[] =>
    line === 'outline' ? [line] : to.seams.flatMap(({ id }, i) => (before[i] === line ? [id] : []));
  return {
    ...dressing,
    treatments: withFreeNumbers([...worked, ...(edge ? [edge] : []), ...lost], to),
    ...(bare && { bare: left }),
    ...(order && { order: order.flatMap(now) }),
  };
}

/**
 * A dressing whose treatments have the numbers that their seams have in this map, and are told in the direction that these have:
 * what lies on a seam has its number, and what lies on none has a number that no seam has.
 */
export function numberedOn(dressing: Dressing, map: SeamMap): Dressing {
  const { treatments, bare, order } = dressing;
  const lines = references(map, treatments);
  const bareLines = references(
    map,
    (bare ?? []).map((seam) => ({ seam })),
  );
  const told = treatments.map((one, t) => {
    const line = lines[t];
    return line === null || line === 'outline' ? one : onSeam(one, one.seam, map.seams[line - 1]);
  });
  const isRight = lines.every((line, t) => line === treatments[t].seam.id && told[t] === treatments[t]);
  if (isRight && bareLines.every((line, b) => line === bare![b].id)) return dressing;
  const on = (seam: SeamReference, line: Line | null): SeamReference =>
    line === null || line === 'outline' || line === seam.id ? seam : referenceTo(map.seams[line - 1]);
  const found = told.map((one, t): Treatment => {
    const line = lines[t];
    // a seam that runs the other way now has its start elsewhere
    const isTurned = one !== treatments[t] && typeof line === 'number';
    return { ...one, seam: isTurned ? referenceTo(map.seams[line - 1]) : on(one.seam, line) };
  });
  const renamed = new Map(treatments.map(({ seam }, t) => [seam.id, found[t].seam.id]));
  return {
    ...dressing,
    treatments: withFreeNumbers(found, map),
    ...(bare && { bare: bare.map((seam, b) => on(seam, bareLines[b])) }),
    ...(order && { order: order.map((id) => renamed.get(id) ?? id) }),
  };
}

/** Treatments whose seam is gone get numbers that no seam of the map has, so that no other is taken for theirs. */
export function withFreeNumbers(treatments: readonly Treatment[], map: SeamMap): Treatment[] {
  const taken = new Set<Line>(map.seams.map(({ id }) => id));
  const lines = references(map, treatments);
  for (const [t, line] of lines.entries()) if (line === null) taken.delete(treatments[t].seam.id);
  for (const { id } of map.seams) taken.add(id);
  return treatments.map((one, t) => {
    if (lines[t] !== null) return one;
    let { id } = one.seam;
    if (taken.has(id)) for (id = map.seams.length + 1; taken.has(id); ) id++;
    taken.add(id);
    return id === one.seam.id ? one : { ...one, seam: { ...one.seam, id } };
  });
}

/** The lines that treatments lie on; null for one that lies on none. */
function references(map: SeamMap, treatments: readonly Pick<Treatment, 'seam'>[]): (Line | null)[] {
  return resized(
    map,
    treatments.map(({ seam }) => seam),
  ).map((reference) => {
    const found = seamOf(map, reference);
    return found === null || found === 'outline' ? found : found.id;
  });
}

/** The line that most of a seam was before; null where none lay. */
function lineBefore({ seams }: SeamMap, seam: Seam): number | null {
  const at = cumulativeLength(seam.points);
  const length = at[at.length - 1];
  const counts = seams.map(() => 0);
  for (let k = 0; k < LOOKS; k++) {
    const place = pointAtLength(seam.points, at, ((k + 0.5) / LOOKS) * length);
    const under = seams.findIndex(({ points }) => footOn(points, place).distance <= SAME_PLACE);
    if (under >= 0) counts[under]++;
  }
  const most = Math.max(...counts);
  return most > 0 ? seams[counts.indexOf(most)].id : null;
}
