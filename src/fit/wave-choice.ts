import { countSteps } from './count-steps.js';
import type { SpanQuestion } from './fit-span.js';
import { NARROWING } from './lines.js';
import { wholeOverhang } from './rows.js';
import { stretchLengths } from './span-counts.js';
import { bestWaveCounts, type WaveCount } from './wave-counts.js';
import { goesRound, goesRoundCorners, type WaveGuide, waveGuide } from './wave-guide.js';
import type { WaveStretch, Waves } from './waves.js';

/** What one stretch of the line gets. */
export type Counted = WaveStretch & WaveCount;

/** Waves of one size on every stretch, and their line. */
export interface WaveChoice {
  readonly scale: number;
  readonly waves: Waves;
  readonly counted: readonly Counted[];
  readonly line: WaveGuide;
}

/** Counts that leave nothing over of any row, at the largest size at which there are such; else those of the first row. */
export function chooseWaves(question: SpanQuestion, gap: number): WaveChoice | null {
  const { own, filling } = countSteps(question.rows);
  const filled = filling > own ? wavesBy(question, filling, gap) : null;
  return filled ?? wavesBy(question, own, gap);
}

function wavesBy(question: SpanQuestion, filling: number, gap: number): WaveChoice | null {
  const { span, rows } = question;
  const { sized } = rows;
  const hand = waveHand(question);
  const steps = countSteps(rows);
  const least = Math.min(sized.least, question.scale);
  for (let scale = question.scale; ; scale = Math.max(least, scale * NARROWING)) {
    const waves = { ...rows.waves!, height: rows.waves!.height * scale };
    const repeat = sized.repeat * scale;
    const overhang = span.ring ? { start: 0, end: 0 } : wholeOverhang(rows, scale, repeat);
    const lengths = stretchLengths(span, overhang);
    const counts = bestWaveCounts({
      lengths,
      waves,
      repeat,
      own: steps.own,
      filling,
      sharp: waves.shape !== 'wave' && !goesRoundCorners(rows),
      ring: span.ring ? (filling === steps.filling ? steps.ring : 2) : null,
    });
    if (counts) {
      let from = span.ring ? 0 : span.start.at + span.start.setback + overhang.start;
      const turns = turnsAlong(question);
      const counted = counts.map((count, i) => {
        from += lengths[i];
        return { ...count, from: from - lengths[i], to: from, turns: [turns[i], turns[i + 1]] as const };
      });
      const line = waveGuide(waves, counted, rows, scale, hand, gap);
      if (goesRound(line)) return { scale, waves, counted, line };
    }
    if (scale <= least + 1e-9) return null;
  }
}

/** What the seam turns at the ends of its stretches, the first one's start first. */
function turnsAlong({ span, guide }: SpanQuestion): number[] {
  const atStart = span.ring ? (guide.corners.find(({ u }) => u === 0)?.turn ?? 0) : 0;
  return [atStart, ...span.corners.map(({ turn }) => turn), atStart];
}

/**
 * To which hand the waves rise first. A zigzag looks the same from both: where its seam has corners their low points lie
 * on the outer side, and cover them instead of cutting across.
 */
export function waveHand({ span, guide, rows }: SpanQuestion): 1 | -1 {
  if (rows.waves!.shape !== 'points') return rows.hand;
  const corners = span.ring ? guide.corners : span.corners;
  const turn = corners.reduce((sum, corner) => sum + corner.turn, 0);
  return turn === 0 ? rows.hand : turn > 0 ? 1 : -1;
}
