import { type Design, type Stop, stopsInOrder } from '../design/design.js';
import { type StopsBy, threadKey } from '../design/merge.js';
import type { Finding } from '../finding.js';

/** Stops that hooping asks for are not among those that are sewn together. */
const OF_HOOPING: ReadonlySet<Stop['kind']> = new Set(['placement', 'basting', 'alignment']);

/** Threads that keep several color stops though each was to have one, and stops that stay apart though all were to be one. */
export function stopsKeptApart(design: Design, by: StopsBy): Finding[] {
  if (by === 'row') return [];
  const made = stopsInOrder(design).flatMap((stop, i) =>
    stop && !OF_HOOPING.has(stop.kind) ? [{ stop, number: i + 1 }] : [],
  );
  const groups = new Map<string, typeof made>();
  for (const one of made) {
    const key = by === 'all' ? '' : threadKey(one.stop.thread);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()]
    .filter((group) => group.length > 1)
    .map((group): Finding => {
      const numbers = inWords(group.map(({ number }) => number));
      const who =
        by === 'all' ? 'not all is sewn in one color stop but in' : `${group[0].stop.thread.name} takes`;
      return {
        level: 'note',
        code: 'stops-kept-apart',
        message: `${who} ${group.length} color stops, ${numbers}: what is sewn or laid by hand between them has to lie over the one and under the other`,
        stop: group[0].number,
      };
    });
}

const inWords = (numbers: readonly number[]): string =>
  `${numbers.slice(0, -1).join(', ')} and ${numbers[numbers.length - 1]}`;
