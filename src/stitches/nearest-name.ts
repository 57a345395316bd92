import { distance } from 'fastest-levenshtein';

/**
 * The name nearest to what was written, capitals aside: a name, or a word in it, may also just have been begun. Of names
 * as near the shortest: "hering" means herringbone rather than one of its kin.
 */
export function nearestName(written: string, names: readonly string[]): string {
  const wanted = written.trim().toLowerCase().slice(0, LONGEST);
  const far = (name: string) => {
    const whole = name.toLowerCase();
    const words = [...whole.matchAll(/(?<=^|[\s-])[^\s-]/g)].map(({ index }) => whole.slice(index));
    const begun = words.flatMap((word) =>
      [0, 1].map((more) => distance(wanted, word.slice(0, wanted.length + more))),
    );
    return Math.min(distance(wanted, whole), ...begun.map((one) => one + BEGUN));
  };
  return names.reduce((best, name) => {
    const nearer = far(name) - far(best) || name.length - best.length;
    return nearer < 0 ? name : best;
  });
}

/** Longer words are nobody's. */
const LONGEST = 60;
/** What was begun differs from a name a little more than what was written out. */
const BEGUN = 0.5;
