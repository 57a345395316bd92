/** Up to this many members the order is exact; the table has 2^n entries. */
const EXACT = 16;

/**
 * An order of `members` in which as few as possible come before one that `earlier` puts before them. Exact for up to
 * 16 members, by dynamic programming over the sets already placed (the recurrence of Held and Karp, 1962); among equals
 * the order with the lowest members first. Larger groups, as maps with hundreds of lines have them, are placed greedily (next
 * comes whoever waits for the fewest), then members move to a better place as long as that breaks fewer: close to the
 * fewest, not always there.
 */
export function fewestBroken(
  members: readonly number[],
  earlier: readonly (readonly number[])[],
  exactUpTo = EXACT,
): number[] {
  if (members.length === 1) return [...members];
  const place = new Map(members.map((member, i) => [member, i]));
  const waits = members.map((member) =>
    earlier[member].filter((e) => place.has(e)).map((e) => place.get(e)!),
  );
  const order = members.length <= exactUpTo ? exact(waits) : settled(greedy(waits), waits);
  return order.map((i) => members[i]);
}

function exact(waits: readonly (readonly number[])[]): number[] {
  const n = waits.length;
  const masks = waits.map((waited) => waited.reduce((mask, e) => mask | (1 << e), 0));
  const all = (1 << n) - 1;
  // least[placed]: fewest broken by placing all the others after those
  const least = new Uint16Array(all + 1);
  const broken = (i: number, placed: number) => bits(masks[i] & ~placed);
  for (let placed = all - 1; placed >= 0; placed--) {
    let best = 0xffff;
    for (let i = 0; i < n; i++) {
      if (placed & (1 << i)) continue;
      best = Math.min(best, broken(i, placed) + least[placed | (1 << i)]);
    }
    least[placed] = best;
  }
  const order: number[] = [];
  for (let placed = 0; placed !== all; ) {
    let i = 0;
    while (placed & (1 << i) || broken(i, placed) + least[placed | (1 << i)] !== least[placed]) i++;
    order.push(i);
    placed |= 1 << i;
  }
  return order;
}

function greedy(waits: readonly (readonly number[])[]): number[] {
  const waitedFor = waits.map((): number[] => []);
  waits.forEach((waited, i) => {
    for (const e of waited) waitedFor[e].push(i);
  });
  const waiting = waits.map((waited) => waited.length);
  return waits.map(() => {
    let next = 0;
    for (let i = 1; i < waiting.length; i++) if (waiting[i] < waiting[next]) next = i;
    waiting[next] = Number.POSITIVE_INFINITY;
    for (const i of waitedFor[next]) waiting[i]--;
    return next;
  });
}

/** Every move breaks fewer than before, so this comes to an end. */
function settled(order: number[], waits: readonly (readonly number[])[]): number[] {
  // pulls[i]: for each member tied to i, what placing it before i saves (1 when i waits for it, -1 the other way round)
  const pulls = waits.map((): [other: number, saves: number][] => []);
  waits.forEach((waited, i) => {
    for (const e of waited) {
      pulls[i].push([e, 1]);
      pulls[e].push([i, -1]);
    }
  });
  const place = new Int32Array(order.length);
  const number = () => {
    for (let at = 0; at < order.length; at++) place[order[at]] = at;
  };
  number();
  for (let moved = true; moved; ) {
    moved = false;
    for (let member = 0; member < order.length; member++) {
      const to = betterPlace(member, place, pulls[member]);
      if (to === place[member]) continue;
      order.splice(place[member], 1);
      order.splice(to, 0, member);
      number();
      moved = true;
    }
  }
  return order;
}

/** Where a member breaks the fewest; where it is unless another place is better. */
function betterPlace(
  member: number,
  place: Int32Array,
  pulls: readonly (readonly [number, number])[],
): number {
  const at = place[member];
  let best = 0;
  let to = at;
  for (const sense of [1, -1]) {
    const met = pulls
      .filter(([other]) => (place[other] - at) * sense > 0)
      .sort(([a], [b]) => (place[a] - place[b]) * sense);
    let saved = 0;
    for (const [other, saves] of met) {
      saved += sense * saves;
      if (saved > best) {
        best = saved;
        to = place[other];
      }
    }
  }
  return to;
}

function bits(mask: number): number {
  let count = 0;
  for (let rest = mask; rest; rest &= rest - 1) count++;
  return count;
}
