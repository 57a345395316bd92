/**
 * What was worked out before, kept by the very objects it was worked out from. Whoever asks again with the same objects
 * gets the same answer, as it is; so a block of which one seam has changed is fitted anew at the cost of that seam and of
 * those that depend on it. Answers are kept with the first two of their objects, the latest few of each pair, and no
 * longer than both.
 */
export class Memory {
  private readonly ofOne = new WeakMap<object, Answered[]>();
  private readonly ofTwo = new WeakMap<object, WeakMap<object, Answered[]>>();

  /** The answer to a question about these objects, in this order; `make` must depend on nothing else. */
  of<Answer>(question: string, from: readonly [object, ...object[]], make: () => Answer): Answer {
    const [first, second] = from;
    const all =
      second === undefined
        ? kept(this.ofOne, first, list)
        : kept(kept(this.ofTwo, first, shelf), second, list);
    for (const one of all)
      if (one.question === question && isSame(one.from, from)) return one.answer as Answer;
    const answer = make();
    if (all.length === KEPT) all.shift();
    all.push({ question, from, answer });
    return answer;
  }
}

/** Answers kept with one pair of objects: more than there are questions, few enough to look through. */
const KEPT = 24;

interface Answered {
  readonly question: string;
  readonly from: readonly object[];
  readonly answer: unknown;
}

const list = (): Answered[] => [];
const shelf = (): WeakMap<object, Answered[]> => new WeakMap();

function kept<Value>(all: WeakMap<object, Value>, key: object, make: () => Value): Value {
  const known = all.get(key);
  if (known !== undefined) return known;
  const value = make();
  all.set(key, value);
  return value;
}

/** The first two are known to be the same. */
function isSame(one: readonly object[], other: readonly object[]): boolean {
  if (one.length !== other.length) return false;
  for (let i = 2; i < one.length; i++) if (one[i] !== other[i]) return false;
  return true;
}
