/**
 * Things that meet and what each of them may get, by index: seams and stitches, or seams and threads. Offers that share
 * a mark (a stitch) clash where the things that got them meet.
 */
export interface Puzzle {
  /** who meets whom, both ways */
  readonly neighbors: readonly (readonly number[])[];
  /** for each thing the offers it may get, at least one */
  readonly offers: readonly (readonly number[])[];
  /** for each offer its marks */
  readonly marks: readonly (readonly number[])[];
  /** 1 where two offers share a mark, row by row */
  readonly clash: Uint8Array;
}

/** A puzzle from what is given; time and room grow with the square of the offers. */
export function puzzleOf(given: Omit<Puzzle, 'clash'>): Puzzle {
  const { marks } = given;
  const clash = new Uint8Array(marks.length ** 2);
  const holders = new Map<number, number[]>();
  marks.forEach((list, offer) => {
    for (const mark of list) holders.set(mark, [...(holders.get(mark) ?? []), offer]);
  });
  for (const offers of holders.values()) {
    for (const a of offers) for (const b of offers) clash[a * marks.length + b] = 1;
  }
  return { ...given, clash };
}

export const clashIn = ({ clash, marks }: Puzzle, a: number, b: number): boolean =>
  clash[a * marks.length + b] === 1;

/** The pairs that meet with offers that clash; -1 is nothing chosen yet. */
export function clashes(puzzle: Puzzle, chosen: ArrayLike<number>): [number, number][] {
  return puzzle.neighbors.flatMap((near, a) =>
    near.flatMap((b): [number, number][] =>
      b > a && chosen[a] >= 0 && chosen[b] >= 0 && clashIn(puzzle, chosen[a], chosen[b]) ? [[a, b]] : [],
    ),
  );
}

/** What offers cost beside those already counted; the lower the better. */
export interface Ledger {
  cost(thing: number, offer: number, chosen: ArrayLike<number>): number;
  /** takes note that a thing got an offer (1) or gave it back (-1) */
  count(thing: number, offer: number, by: 1 | -1): void;
}

/** The offer with the fewest clashes, of these the cheapest, of these the first. */
export function bestOffer(
  { neighbors, offers, marks, clash }: Puzzle,
  ledger: Ledger,
  thing: number,
  chosen: ArrayLike<number>,
): number {
  const near = neighbors[thing];
  let best = -1;
  let fewest = Number.POSITIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  for (const offer of offers[thing]) {
    let count = 0;
    for (const other of near) {
      if (chosen[other] >= 0) count += clash[offer * marks.length + chosen[other]];
    }
    if (count > fewest) continue;
    const price = ledger.cost(thing, offer, chosen);
    if (count === fewest && price >= least) continue;
    best = offer;
    fewest = count;
    least = price;
  }
  return best;
}
