import { type LineId, meetingPoint } from '../block/meetings.js';
import type { SeamMap } from '../block/seam-map.js';
import { type Finding, lineName } from '../finding.js';
import type { StitchChoice } from './stitch-choice.js';

/**
 * Each pair that meets and shares a stitch all the same, by name.
 * @param stays lines that have what they have in any case
 */
export function clashFindings(
  map: SeamMap,
  lines: readonly LineId[],
  choice: StitchChoice,
  stays: ReadonlySet<LineId>,
): Finding[] {
  return choice.clashes.map(([a, b]) => {
    const shared = choice.offers[a].stitches.find((stitch) => choice.offers[b].stitches.includes(stitch));
    const names = [lines[a], lines[b]].map(lineName);
    const reason = [a, b].every((line) => stays.has(lines[line]))
      ? 'both are asked for; another stitch for one of them would help'
      : `${choice.proved ? 'the library that fits here has too few to keep all apart' : 'no better choice was found'}; other stitches or other pins would help`;
    return {
      level: 'warning',
      code: 'stitches-meet',
      message: `${names[0]} and ${names[1]} meet and both have ${shared}: ${reason}`,
      ...(lines[a] !== 'outline' && { seam: lines[a] }),
      at: meetingPoint(map, lines[a], lines[b]),
    };
  });
}
