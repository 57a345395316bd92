import type { Finding } from '../finding.js';
import { pointAt, pointCount, polylineLength } from '../geometry/polyline.js';
import type { LineDrawing } from './drawn-line.js';
import { liesOutside, looseEnds, OVERSHOOT } from './loose-ends.js';
import { thickness } from './patches.js';
import type { SeamMap } from './seam-map.js';
import type { LostWish } from './wishes.js';

/** Patches thinner than this are no fabric anybody cut: two lines that were meant to be one, mm. */
const SLIVER = 1;

/** What a maker should know about the lines of a block: lines left out, slivers, lines beyond the outline. */
export function mapFindings(input: {
  readonly map: SeamMap;
  readonly drawing: LineDrawing;
  readonly snap: number;
  /** drawn lines that are in the network, or were made one with another */
  readonly present: ReadonlySet<number>;
  readonly tooShort: readonly number[];
  /** separate parts of the block beside the largest */
  readonly others: number;
  readonly lost: readonly LostWish[];
}): Finding[] {
  const { map, drawing, snap, present, tooShort, others, lost } = input;
  const findings: Finding[] = [];
  const short = new Set(tooShort);
  drawing.lines.forEach(({ points, where }, i) => {
    if (present.has(i) && !short.has(i)) return;
    const length = pointCount(points) > 1 ? polylineLength(points) : 0;
    const wrong = short.has(i)
      ? `line of ${length.toFixed(2)} mm is shorter than the ${snap} mm within which ends meet, and was left out`
      : `line of ${length.toFixed(2)} mm vanished between ends that meet within ${snap} mm`;
    findings.push({
      level: 'note',
      code: 'line-left-out',
      message: `${where}: ${wrong}`,
      at: pointAt(points, 0),
    });
  });
  for (const patch of map.patches) {
    const width = thickness(patch);
    if (width >= SLIVER) continue;
    findings.push({
      level: 'warning',
      code: 'sliver-patch',
      message: `patch ${patch.id} is a sliver about ${width.toFixed(2)} mm wide; if its two sides are one seam, draw them as one or raise --snap`,
      at: pointAt(patch.boundary, 0),
    });
  }
  if (map.outline) {
    for (const seam of map.seams) {
      if (!liesOutside(seam)) continue;
      const length = polylineLength(seam.points);
      const right =
        length <= OVERSHOOT ? '; if it is the end of a line drawn past it, end the line there' : '';
      findings.push({
        level: 'note',
        code: 'outside-outline',
        message: `seam ${seam.id} (${length.toFixed(1)} mm) lies outside the outline${right}`,
        seam: seam.id,
        at: pointAt(seam.points, 0),
      });
    }
  }
  findings.push(...looseEnds(map));
  if (others > 0) {
    findings.push({
      level: 'warning',
      code: 'several-parts',
      message: `the block has ${others + 1} parts that do not touch; the largest has the outline, the edges of the rest are seams`,
    });
  }
  if (!map.seams.length) {
    findings.push({
      level: 'warning',
      code: 'no-seams',
      message: 'the block has an outline and no seam inside it',
    });
  }
  for (const { kind, at, seams } of lost) {
    const place = `a junction near ${at[0]}, ${at[1]}`;
    const message = {
      through: `seam ${seams[0]} does not run through ${place}, so it cannot be the through seam there`,
      split: `seam ${seams[0]} does not run through ${place}, so there is nothing to split`,
      join: `seams ${seams.join(' and ')} do not both reach ${place}, so they cannot be joined there`,
    }[kind];
    findings.push({ level: 'warning', code: `${kind}-lost`, message, at });
  }
  return findings;
}
