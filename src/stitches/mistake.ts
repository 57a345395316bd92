/** A mistake in a file of the dictionary: the place inside it, what is wrong, what would be right. */
export interface Mistake {
  readonly place: string;
  readonly wrong: string;
  readonly right: string;
}

export function addMistake(mistakes: Mistake[], place: string, wrong: string, right: string): void {
  mistakes.push({ place, wrong, right });
}
