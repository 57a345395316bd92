import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bestWaveCounts, type WaveCount, type WaveQuestion } from '../../src/fit/wave-counts.js';
import { alongOneWave, type WaveShape } from '../../src/fit/waves.js';

const questions = fc
  .constantFrom<WaveShape>('wave', 'scallop', 'points')
  .chain((shape) =>
    fc.record({
      lengths: fc.array(fc.double({ min: 8, max: 50, noNaN: true }), { minLength: 1, maxLength: 3 }),
      waves: fc.record({
        shape: fc.constant(shape),
        height: fc.double({ min: 1, max: 6, noNaN: true }),
        length: fc.double({ min: 10, max: 24, noNaN: true }),
      }),
      repeat: fc.double({ min: 3, max: 9, noNaN: true }),
      own: fc.constantFrom(1, 2),
      filling: fc.constantFrom(1, 2, 4),
      sharp: fc.boolean(),
      ring: fc.constantFrom(null, 2, 4),
    }),
  )
  .filter(({ own, filling, sharp, waves }) => filling >= own && !(sharp && waves.shape === 'wave'));

/** Half-repeats and cost of counts, by the rule as it is stated; null where it does not allow them. */
function judged(counts: readonly WaveCount[], question: WaveQuestion) {
  const { lengths, waves, repeat, own, filling, sharp, ring } = question;
  const flanks = (share: number) => (share === 1 && waves.shape === 'points' ? 2 : 1);
  const perStretch = counts.map(({ waves: count, halfRepeats, share }, i) => {
    const length = lengths[i] / count;
    const all = (count / share) * flanks(share) * halfRepeats;
    return {
      wave: length / waves.length,
      repeat: (2 * count * alongOneWave(waves, length)) / all / repeat,
      all,
    };
  });
  const isAllowed = perStretch.every(({ wave, repeat, all }, i) => {
    const { waves: count, halfRepeats, share } = counts[i];
    const piece = sharp ? halfRepeats : all;
    return (
      count % share === 0 &&
      (share === 1 ? halfRepeats % own === 0 : halfRepeats === 2 && waves.shape === 'wave') &&
      piece % filling === 0 &&
      wave > 0.6 - 1e-9 &&
      wave < 1.6 + 1e-9 &&
      repeat > 0.8 - 1e-9 &&
      repeat < 1.25 + 1e-9
    );
  });
  const all = perStretch.reduce((sum, one) => sum + one.all, 0);
  if (!isAllowed || (ring !== null && all % ring !== 0)) return null;
  const between = (a: number, b: number) => Math.log(a / b) ** 2;
  let cost = 0;
  perStretch.forEach((one, i) => {
    cost += between(one.wave, 1) + between(one.repeat, 1);
    const before =
      i > 0 ? perStretch[i - 1] : ring !== null && counts.length > 1 ? perStretch[counts.length - 1] : null;
    if (before) cost += between(one.wave, before.wave) + between(one.repeat, before.repeat);
  });
  return cost;
}

/** Every combination of what each stretch may get by itself. */
function exhaustive(question: WaveQuestion): number | null {
  const alone = question.lengths.map((length) => {
    const found: WaveCount[] = [];
    for (let waves = 1; waves <= length / (0.55 * question.waves.length); waves++) {
      for (const share of [1, 2, 3]) {
        const most = (2.6 * share * alongOneWave(question.waves, length / waves)) / question.repeat;
        for (let halfRepeats = 1; halfRepeats <= most; halfRepeats++) {
          const one = { waves, halfRepeats, share };
          if (judged([one], { ...question, lengths: [length], ring: null }) !== null) found.push(one);
        }
      }
    }
    return found;
  });
  let best: number | null = null;
  const visit = (chosen: WaveCount[]) => {
    if (chosen.length === question.lengths.length) {
      const cost = judged(chosen, question);
      if (cost !== null && (best === null || cost < best)) best = cost;
      return;
    }
    for (const one of alone[chosen.length]) visit([...chosen, one]);
  };
  visit([]);
  return best;
}

test('no other counts of waves and repeats fit a line with corners better (exhaustive search)', () => {
  const wrong: unknown[] = [];
  let filled = 0;
  fc.assert(
    fc.property(questions, (question) => {
      const found = bestWaveCounts(question);
      const cost = found && judged(found, question);
      const best = exhaustive(question);
      if (best !== null) filled++;
      const isSame =
        cost !== null && best !== null ? Math.abs(cost - best) < 1e-9 : found === null && best === null;
      if (!isSame) wrong.push({ question, found, cost, best });
    }),
    { numRuns: 400 },
  );
  expect(wrong).toEqual([]);
  expect(filled).toBeGreaterThan(100);
});
