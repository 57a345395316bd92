/**
 * What was worked out last time, place by place, and the very objects it was worked out from. Whoever asks again with the
 * same objects gets the same answer, as it is; so a block of which one seam has changed is fitted anew at the cost of that
 * seam and of those that depend on it, and a look at every other.
 */
export class Memory {
  private readonly shelves = new Map<string, Map<number, Answered>>();

  /**
   * The answer to a question about these objects, in this order.
   *
   * @param place number of the line, or of whatever the question is asked of: each keeps its last answer
   * @param make depends on nothing but the objects
   */
  of<Answer>(question: string, place: number, from: readonly object[], make: () => Answer): Answer {
    let shelf = this.shelves.get(question);
    if (shelf === undefined) {
      shelf = new Map();
      this.shelves.set(question, shelf);
    }
    const last = shelf.get(place);
    if (last !== undefined && isSame(last.from, from)) return last.answer as Answer;
    const answer = make();
    shelf.set(place, { from, answer });
    return answer;
  }
}

interface Answered {
  readonly from: readonly object[];
  readonly answer: unknown;
}

function isSame(one: readonly object[], other: readonly object[]): boolean {
  if (one.length !== other.length) return false;
  for (let i = 0; i < one.length; i++) if (one[i] !== other[i]) return false;
  return true;
}
