import type { SeamMap } from '../block/seam-map.js';
import { type Finding, lineName } from '../finding.js';
import { type LineId, meetingPoint } from './meetings.js';
import type { StitchChoice } from './stitch-choice.js';

/** Each pair that meets and shares a stitch all the same, by name. */
export function clashFindings(map: SeamMap, lines: readonly LineId[], choice: StitchChoice): Finding[] {
  return choice.clashes.map(([a, b]) => {
    const shared = choice.offers[a].stitches.find((stitch) => choice.offers[b].stitches.includes(stitch));
    const names = [lines[a], lines[b]].map(lineName);
    const fewest = choice.proved
      ? 'the library that fits here has too few to keep all apart'
      : 'no better choice was found';
    return {
      level: 'warning',
      code: 'stitches-meet',
      message: `${names[0]} and ${names[1]} meet and both have ${shared}: ${fewest}; other stitches or other pins would help`,
      ...(lines[a] !== 'outline' && { seam: lines[a] }),
      at: meetingPoint(map, lines[a], lines[b]),
    };
  });
}
