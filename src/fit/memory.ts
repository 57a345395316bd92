/**
 * What was worked out before, kept by the very objects it was worked out from. Whoever asks again with the same objects
 * gets the same answer, as it is; so a block of which one seam has changed is fitted anew at the cost of that seam and of
 * those that depend on it. Nothing is kept longer than the objects it came from.
 */
export class Memory {
  private readonly shelves = new Map<string, Shelf>();

  /** The answer to a question about these objects, in this order; `make` must depend on nothing else. */
  of<Answer>(question: string, from: readonly object[], make: () => Answer): Answer {
    let shelf: Shelf = this.shelves.get(question) ?? { next: new WeakMap() };
    this.shelves.set(question, shelf);
    for (const object of from) {
      let next: Shelf | undefined = shelf.next.get(object);
      if (!next) {
        next = { next: new WeakMap() };
        shelf.next.set(object, next);
      }
      shelf = next;
    }
    if (!('answer' in shelf)) shelf.answer = make();
    return shelf.answer as Answer;
  }
}

interface Shelf {
  readonly next: WeakMap<object, Shelf>;
  answer?: unknown;
}
