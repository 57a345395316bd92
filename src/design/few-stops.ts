/** So many ways to go on are followed at once; where there are more, those that have sewn most. */
const WAYS = 200;
/** With many pieces fewer ways are followed: so many pieces in all. */
const PIECES = 400_000;

/** What is sewn so far, and in which stops. */
interface Way {
  readonly sewn: Uint8Array;
  readonly count: number;
  readonly stops: readonly (readonly number[])[];
}

/**
 * Gathers what is of one kind into as few color stops as can be, all that has to be sewn before something else staying before
 * it. Each stop takes all of its kind that may be sewn by then, since what is taken early never stands in the way. Which
 * kind comes next is found by following all ways side by side: the fewest stops, as long as there are at most 200 ways with
 * as many stops; beyond that the most promising ones, and close to the fewest. Members of a stop ascend.
 *
 * @param kinds of each member
 * @param earlier for each member those that have to be sewn before it; all are less than it
 */
export function fewStops(kinds: readonly unknown[], earlier: readonly (readonly number[])[]): number[][] {
  const n = kinds.length;
  const most = Math.max(1, Math.min(WAYS, Math.floor(PIECES / Math.max(1, n))));
  let ways: Way[] = [{ sewn: new Uint8Array(n), count: 0, stops: [] }];
  for (;;) {
    const whole = ways.find(({ count }) => count === n);
    if (whole) return whole.stops.map((stop) => [...stop]);
    const next = new Map<string, Way>();
    for (const way of ways) {
      for (const kind of readyKinds(way, kinds, earlier)) {
        const further = withStop(way, kind, kinds, earlier);
        const key = String.fromCharCode(...bytesOf(further.sewn));
        if (!next.has(key)) next.set(key, further);
      }
    }
    ways = [...next.values()].sort((a, b) => b.count - a.count).slice(0, most);
  }
}

/** Kinds of which something may be sewn now, in the order of their first member. */
function readyKinds(
  { sewn }: Way,
  kinds: readonly unknown[],
  earlier: readonly (readonly number[])[],
): Set<unknown> {
  const ready = new Set<unknown>();
  for (let i = 0; i < sewn.length; i++) {
    if (!sewn[i] && !ready.has(kinds[i]) && earlier[i].every((before) => sewn[before])) ready.add(kinds[i]);
  }
  return ready;
}

/** With a further stop of all of a kind that may be sewn; a member may wait for one of its own kind, which stands before it. */
function withStop(
  way: Way,
  kind: unknown,
  kinds: readonly unknown[],
  earlier: readonly (readonly number[])[],
): Way {
  const sewn = way.sewn.slice();
  const stop: number[] = [];
  for (let i = 0; i < sewn.length; i++) {
    if (sewn[i] || kinds[i] !== kind || !earlier[i].every((before) => sewn[before])) continue;
    sewn[i] = 1;
    stop.push(i);
  }
  return { sewn, count: way.count + stop.length, stops: [...way.stops, stop] };
}

/** Sixteen members in each number. */
function bytesOf(sewn: Uint8Array): number[] {
  const codes = new Array<number>(Math.ceil(sewn.length / 16)).fill(0);
  sewn.forEach((is, i) => {
    if (is) codes[i >> 4] |= 1 << (i & 15);
  });
  return codes;
}
