import type { SeamMap } from './seam-map.js';

/** A line that can be dressed: a seam by its number, or the outline. */
export type LineId = number | 'outline';

/**
 * Which lines meet: all pairs of the lines at a junction count, not only those that lie next to each other there, since
 * the eye sees them together.
 */
export function meetings(map: SeamMap): Map<LineId, Set<LineId>> {
  const meets = new Map<LineId, Set<LineId>>(map.seams.map((seam) => [seam.id, new Set()]));
  if (map.outline) meets.set('outline', new Set());
  for (const { arms } of map.junctions) {
    for (const a of arms) {
      for (const b of arms) {
        if (a.seam !== b.seam) meets.get(a.seam)?.add(b.seam);
      }
    }
  }
  return meets;
}

/** The same for some of the lines, by their place in the list. */
export function meetingsAmong(map: SeamMap, lines: readonly LineId[]): number[][] {
  const meets = meetings(map);
  const place = new Map(lines.map((line, i) => [line, i]));
  return lines.map((line) =>
    [...(meets.get(line) ?? [])].flatMap((other) => place.get(other) ?? []).sort((a, b) => a - b),
  );
}

/** Where two lines meet, mm; the first such junction. */
export const meetingPoint = (map: SeamMap, a: LineId, b: LineId): readonly [number, number] | undefined =>
  map.junctions.find(({ arms }) => [a, b].every((line) => arms.some((arm) => arm.seam === line)))?.at;

/** The most of these lines that meet at one junction: no fewer stitches can keep them apart. */
export function largestMeeting(map: SeamMap, lines: readonly LineId[]): number {
  const asked = new Set(lines);
  const sizes = map.junctions.map(
    ({ arms }) => new Set(arms.map((arm) => arm.seam).filter((line) => asked.has(line))).size,
  );
  return Math.max(Math.min(1, lines.length), ...sizes);
}
