/** A mistake in a file of the dictionary: the place inside it, what is wrong, what would be right. */
export interface Mistake {
  readonly place: string;
  readonly wrong: string;
  readonly right: string;
  /**
   * Parts of the file that it was judged by beside its own place, such as `points.tip`; `legs` is all of them. Where one
   * of these is wrong itself, the mistake may only follow from that.
   */
  readonly by?: readonly string[];
}

export function addMistake(
  mistakes: Mistake[],
  place: string,
  wrong: string,
  right: string,
  by: readonly string[] = [],
): void {
  mistakes.push({ place, wrong, right, by });
}

/** Each mistake once: what is written once and worked many times is found wrong in every copy. */
export function eachOnce(mistakes: readonly Mistake[]): Mistake[] {
  return [...new Map(mistakes.map((mistake) => [`${mistake.place}\n${mistake.wrong}`, mistake])).values()];
}
