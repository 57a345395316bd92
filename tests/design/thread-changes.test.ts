import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COMMON_PACE, paceOf } from '../../src/design/pace.js';
import { changeTimes } from '../../src/design/thread-changes.js';

const several = (needles: number) => ({ ...COMMON_PACE, needles });
const sum = (times: readonly number[]) => times.reduce((all, time) => all + time, 0);

/** The fewest minutes over all ways to choose which thread makes room, tried one by one. */
function leastOf(wanted: readonly string[], needles: number): number {
  const { needleSeconds, changeMinutes } = COMMON_PACE;
  const from = (i: number, held: readonly string[]): number => {
    if (i === wanted.length) return 0;
    if (i > 0 && wanted[i] === wanted[i - 1]) return from(i + 1, held);
    if (held.includes(wanted[i])) return (i === 0 ? 0 : needleSeconds / 60) + from(i + 1, held);
    return (
      changeMinutes +
      Math.min(...held.map((_, k) => from(i + 1, [...held.slice(0, k), wanted[i], ...held.slice(k + 1)])))
    );
  };
  return from(0, [...new Set(wanted)].slice(0, needles));
}

describe('the time that thread changes take', () => {
  test('a machine with one needle halts before every stop but the first, 1.5 minutes each (common practice)', () => {
    expect(changeTimes(['red', 'red', null], COMMON_PACE)).toEqual([0, 1.5, 1.5]);
    expect(changeTimes([], COMMON_PACE)).toEqual([]);
  });

  test('one with several needles changes by itself as long as it holds the thread', () => {
    const [first, second, same, back] = changeTimes(['red', 'gold', 'gold', 'red'], several(6));
    expect([first, same]).toEqual([0, 0]);
    expect([second * 60, back * 60]).toEqual([COMMON_PACE.needleSeconds, COMMON_PACE.needleSeconds]);
  });

  test('is the least that any choice of threads to take out can reach', () => {
    const threads = fc.array(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { maxLength: 8 });
    fc.assert(
      fc.property(threads, fc.integer({ min: 2, max: 4 }), (wanted, needles) => {
        expect(sum(changeTimes(wanted, several(needles)))).toBeCloseTo(leastOf(wanted, needles), 9);
      }),
    );
  });

  test('stops that came with the block are each in a thread of their own, since their file names none', () => {
    const times = changeTimes([null, null, 'gold'], several(2));
    expect(times[0]).toBe(0);
    expect(times[1] * 60).toBe(COMMON_PACE.needleSeconds);
    expect(times[2]).toBe(COMMON_PACE.changeMinutes);
  });

  test('what a dressing says of its machine stands before what is common', () => {
    expect(paceOf()).toEqual(COMMON_PACE);
    expect(paceOf({ needles: 10, trimSeconds: 4 })).toEqual({ ...COMMON_PACE, needles: 10, trimSeconds: 4 });
  });
});
