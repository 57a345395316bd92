/** Where a card lies on the table, px. */
export interface CardPlace {
  readonly left: number;
  readonly top: number;
}

interface Room {
  readonly width: number;
  readonly height: number;
}

type Place = readonly [number, number];

/** It stays so far off the edge of the table, px. */
const EDGE = 10;

/**
 * Beside a place of the table, on the side where it covers least of what is being worked: on the right where all are as good,
 * else on the left, below or above. What has no room is moved onto the table.
 *
 * @param off how far off the place it stays, px
 * @param worked places that it had better not cover, px
 */
export function cardPlace(
  [x, y]: Place,
  card: Room,
  table: Room,
  off: number,
  worked: readonly Place[],
): CardPlace {
  const [right, bottom] = [table.width - card.width - EDGE, table.height - card.height - EDGE];
  const onTable = (left: number, top: number): CardPlace => ({
    left: Math.max(EDGE, Math.min(right, left)),
    top: Math.max(EDGE, Math.min(bottom, top)),
  });
  const [middle, level] = [x - card.width / 2, y - card.height / 2];
  const places = [
    onTable(x + off, level),
    onTable(x - off - card.width, level),
    onTable(middle, y + off),
    onTable(middle, y - off - card.height),
  ];
  const covered = places.map(({ left, top }) => {
    const covers = ([px, py]: Place, by = 0) =>
      px > left - by && px < left + card.width + by && py > top - by && py < top + card.height + by;
    // where no side has room, what is worked is covered rather than the place itself
    const place = covers([x, y]) ? 2 : covers([x, y], off / 2) ? 1 : 0;
    return place * (worked.length + 1) + worked.filter((at) => covers(at)).length;
  });
  return places[covered.indexOf(Math.min(...covered))];
}
