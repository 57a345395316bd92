import { bestChain, type Fill } from './best-chain.js';
import { LONGEST_SHARE, SHORTEST_SHARE } from './span-counts.js';
import { alongOneWave, flanksOf, type Waves } from './waves.js';

/** Waves may be made this much shorter or longer than asked. */
export const SHORTEST_WAVE = 0.6;
const LONGEST_WAVE = 1.6;
/** As many waves as this may share one repeat. */
const MOST_PER_REPEAT = 3;

/** What one stretch of a line gets. */
export interface WaveCount {
  readonly waves: number;
  /** half-repeats between one sharp place of the waves and the next, or on `share` smooth waves */
  readonly halfRepeats: number;
  readonly share: number;
}

export interface WaveQuestion {
  /** of the stretches between corners, mm */
  readonly lengths: readonly number[];
  readonly waves: Waves;
  /** wanted repeat, mm */
  readonly repeat: number;
  /** half-repeats that the first row has a multiple of on every flank of the waves */
  readonly own: number;
  /** half-repeats that every piece of the waves worked in one go holds a multiple of */
  readonly filling: number;
  /** such a piece reaches from one sharp place to the next; else it is a whole stretch */
  readonly sharp: boolean;
  /** on a ring, what all half-repeats together are a multiple of */
  readonly ring: number | null;
}

/** Flanks of so many waves that each get whole repeats. */
export const flanks = ({ shape }: Waves, share: number): number => (share > 1 ? 1 : flanksOf(shape));

/**
 * Waves and half-repeats on every stretch. With m_i waves of length l_i and repeats of length r_i it minimizes
 *   sum ln^2(l_i / l) + sum ln^2(r_i / p) + sum over corners ln^2(l_i / l_(i+1)) + ln^2(r_i / r_(i+1)).
 * Null when no counts fit.
 */
export function bestWaveCounts(question: WaveQuestion): readonly WaveCount[] | null {
  return bestChain(
    question.lengths.map((length) => waveFills(length, question)),
    question.ring,
  );
}

type WaveFill = Fill & WaveCount;

/** Every count of waves and half-repeats that a stretch can take. */
export function waveFills(length: number, question: WaveQuestion): WaveFill[] {
  const { waves, repeat, own, filling, sharp } = question;
  const found: WaveFill[] = [];
  const fewest = Math.max(1, Math.ceil(length / (LONGEST_WAVE * waves.length) - 1e-9));
  const most = Math.floor(length / (SHORTEST_WAVE * waves.length) + 1e-9);
  for (let count = fewest; count <= most; count++) {
    const along = alongOneWave(waves, length / count);
    const wave = Math.log(length / count / waves.length);
    for (let share = 1; share <= (waves.shape === 'wave' ? MOST_PER_REPEAT : 1); share++) {
      if (count % share > 0) continue;
      const pieces = (count / share) * flanks(waves, share);
      const exact = (2 * along * share) / flanks(waves, share) / repeat;
      const [least, last] = share > 1 ? [2, 2] : [own, exact / SHORTEST_SHARE + 1e-9];
      for (let h = least; h <= last; h += own) {
        const stretched = exact / h;
        if (stretched < SHORTEST_SHARE - 1e-9 || stretched > LONGEST_SHARE + 1e-9) continue;
        if ((sharp ? h : pieces * h) % filling > 0) continue;
        const log = Math.log(stretched);
        const cost = wave ** 2 + log ** 2;
        found.push({ waves: count, halfRepeats: h, share, h: pieces * h, own: cost, logs: [wave, log] });
      }
    }
  }
  return found;
}
