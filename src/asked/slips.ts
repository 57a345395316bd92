import { InputError } from '../input-error.js';

/** More kinds of slips in one line help nobody. */
const MOST_TOLD = 10;

/** Runs work on one part of a dressing: what it refuses says in which part, and where that stands in the file. */
export function within<T>(where: string, path: readonly (string | number)[], work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const place = error.where ? `${where}, ${error.where}` : where;
    throw new InputError(error.code, place, error.wrong, error.right, path);
  }
}

/** Gathers what is refused, so that all of it can be told at once, the same slip in many places as one. */
export class Slips {
  private readonly all: InputError[] = [];

  /** The list that work gives, or none when it is refused. */
  caught<T>(work: () => T[]): T[] {
    try {
      return work();
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      this.all.push(error);
      return [];
    }
  }

  /** @throws InputError when anything was refused */
  tell(): void {
    if (this.all.length) throw together(this.all);
  }
}

function together(slips: readonly InputError[]): InputError {
  const kinds = new Map<string, { first: InputError; count: number }>();
  for (const slip of slips) {
    const key = `${slip.code} ${slip.wrong} ${slip.right}`.replace(/\d+/g, '');
    const known = kinds.get(key);
    if (known) known.count++;
    else kinds.set(key, { first: slip, count: 1 });
  }
  const [{ first, count }, ...others] = kinds.values();
  const wrong = `${first.wrong}${again(count)}`;
  if (!others.length) return new InputError(first.code, first.where, wrong, first.right, first.path);
  const told = others
    .slice(0, MOST_TOLD - 1)
    .map((kind) => `${kind.first.where}: ${kind.first.wrong}${again(kind.count)} (${kind.first.right})`);
  const more = others.length - told.length;
  return new InputError(
    first.code,
    first.where,
    [`${wrong} (${first.right})`, ...told, ...(more ? [`and ${more} more slips`] : [])].join(', '),
    `correct these ${slips.length} places`,
    first.path,
  );
}

const again = (count: number): string => (count === 1 ? '' : ` (and ${count - 1} more like it)`);
