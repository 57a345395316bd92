import { guideFromLine } from '../geometry/guide-from-line.js';
import type { GuideLine } from '../geometry/guide-line.js';
import { cumulativeLength } from '../geometry/polyline.js';
import { roundedCorners } from '../geometry/rounded-corners.js';
import type { Band, Reach } from './band.js';
import { NARROW_SHARE } from './lines.js';
import { bandIn, roomAlong } from './reach.js';
import { ROUND_SHARE } from './round-corner.js';
import { CREST, type Rows, reachOfRows } from './rows.js';
import { type WaveLine, type WaveStretch, type Waves, waveLine } from './waves.js';

/** The waves as a guide line, in the plane of the seam. */
export interface WaveGuide extends WaveLine {
  readonly guide: GuideLine;
  /** what the rows may take beside it, and what they want */
  readonly band: Band;
  readonly reach: Reach;
}

/** A stitch that goes round its corners has no sharp places in its waves. */
export const goesRoundCorners = ({ sized }: Rows): boolean => sized.stitch.corner === 'round';

/** The waves as a line; a stitch that goes round corners gets them rounded. */
export function waveGuide(
  waves: Waves,
  stretches: readonly WaveStretch[],
  rows: Rows,
  scale: number,
  hand: 1 | -1,
  gap: number,
): WaveGuide {
  const line = waveLine(waves, stretches, hand);
  // what sits on a crest stands clear of the bends beside it
  const bending = { ...rows, accents: rows.accents.filter(({ seat }) => seat !== CREST) };
  const reach = reachOfRows(bending, scale, rows.sized.repeat * scale);
  const widest = Math.max(reach.left, reach.right);
  const bandOf = (guide: GuideLine) => bandIn(roomAlong(guide, widest, gap), guide, reach, gap);
  if (!goesRoundCorners(rows) || line.corners.length === 0) {
    const guide = guideFromLine(line.points, line.corners, false);
    return { ...line, guide, reach, band: bandOf(guide) };
  }
  const points = roundedCorners(line.points, line.corners, false, () => widest / ROUND_SHARE);
  const guide = guideFromLine(points, [], false);
  const sharp = cumulativeLength(line.points);
  const shorter = guide.length / sharp[sharp.length - 1];
  const crests = line.crests.map((top) => ({ ...top, at: top.at * shorter }));
  return { ...line, corners: [], crests, guide, reach, band: bandOf(guide) };
}

/** Whether the rows can be worked along the waves without folding over, nowhere pressed below half their reach. */
export function goesRound({ band, reach }: WaveGuide): boolean {
  const isRoomy = (values: Float64Array, wanted: number) =>
    values.every((value) => value >= NARROW_SHARE * wanted - 1e-9);
  return isRoomy(band.left, reach.left) && isRoomy(band.right, reach.right);
}
