/** What one question was answered for every line of a block. */
export interface Answers<Answer> {
  /** until it is asked the next time */
  readonly of: readonly Answer[];
  /** the lines, by number, to which it is another answer than last time */
  readonly changed: readonly number[];
}

/** Answers to begin with where none are remembered, and the lines to which they are not the answer. */
export interface Start<Answer> {
  readonly of: readonly Answer[];
  readonly stale: Iterable<number>;
}

/**
 * What was worked out last time, question by question, for every line of a block. Whoever asks again names the lines for
 * which anything that the answer is made of has changed; only they are worked out anew, so that a block of which one
 * seam has changed costs no more than that seam and those that depend on it.
 */
export class Memory {
  private subject: readonly unknown[] = [];
  private round = 0;
  private readonly shelves = new Map<string, Shelf>();

  /**
   * To be called before the questions of each time.
   *
   * @param subject what all answers hang on: where any of it is another than last time, all is forgotten
   */
  begin(subject: readonly unknown[]): void {
    const { length } = subject;
    if (length !== this.subject.length || subject.some((one, i) => one !== this.subject[i])) {
      this.shelves.clear();
    }
    this.subject = subject;
    this.round++;
  }

  /** The answer to a question about the subject itself. */
  once<Answer>(question: string, make: () => Answer): Answer {
    const known = this.shelves.get(question);
    if (known) return known.of[0] as Answer;
    const answer = make();
    this.shelves.set(question, { of: [answer], round: this.round });
    return answer;
  }

  /** What a question was answered last time, if it was asked then. */
  last<Answer>(question: string): readonly Answer[] | undefined {
    const shelf = this.shelves.get(question);
    // what was not asked last time has not been told what changed then
    return shelf !== undefined && shelf.round >= this.round - 1 ? (shelf.of as readonly Answer[]) : undefined;
  }

  /**
   * The answers for all lines, from 0 to before `lines`.
   *
   * @param stale lines whose grounds may have changed since last time, each once
   * @param make the answer for a line; where it is what it was, `last` may be given back, and nothing that follows from it
   *   is worked out again
   * @param start where last time is not known; without it every line is asked
   */
  each<Answer>(
    question: string,
    lines: number,
    stale: Iterable<number> | 'all',
    make: (line: number, last: Answer | undefined) => Answer,
    start?: Start<Answer>,
  ): Answers<Answer> {
    const known = this.last<Answer>(question) as Answer[] | undefined;
    // kept answers are put in place, not copied: what one seam costs is not to grow with all others
    const answers: Answer[] = known ?? start?.of.slice() ?? new Array(lines);
    const changed: number[] = [];
    const look = (line: number) => {
      const last = answers[line] as Answer | undefined;
      answers[line] = make(line, last);
      if (answers[line] !== last) changed.push(line);
    };
    const some = known ? stale : (start?.stale ?? 'all');
    if (some === 'all') for (let line = 0; line < lines; line++) look(line);
    else for (const line of some) look(line);
    this.shelves.set(question, { of: answers, round: this.round });
    return { of: answers, changed: known ? changed : [...answers.keys()] };
  }
}

interface Shelf {
  readonly of: readonly unknown[];
  readonly round: number;
}

/** The lines that are in any of these lists, each once. */
export function either(...lists: readonly Iterable<number>[]): Set<number> {
  const all = new Set<number>();
  for (const list of lists) for (const line of list) all.add(line);
  return all;
}

/** The lines of a list and all that are linked to one of them: `links` says for every line to which. */
export function withLinked(list: Iterable<number>, links: readonly Iterable<number>[]): Set<number> {
  const all = new Set<number>();
  for (const line of list) {
    all.add(line);
    for (const other of links[line]) all.add(other);
  }
  return all;
}
