import { checkStitchFile, readStitch } from '../../src/stitches/check.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import { LazyShelf } from '../../src/stitches/lazy-shelf.js';
import type { Stitch } from '../../src/stitches/stitch.js';
import type { BenchAsks, OwnStitch } from './bench-messages.js';
import { complaintOf } from './complaint.js';
import type { Complaint } from './messages.js';

/** A dictionary in which a maker's own stitches stand before the others. A file with a mistake is told and left out. */
export async function withOwn(
  builtIn: Dictionary,
  stitches: readonly OwnStitch[],
): Promise<{ library: Dictionary; own: ReadonlySet<string>; wrong: Complaint[] }> {
  const read = new Map<string, Stitch>();
  const wrong: Complaint[] = [];
  for (const { name, text } of stitches) {
    try {
      read.set(name, await readStitch(text, name, `${name}.json`));
    } catch (error) {
      wrong.push(complaintOf(error));
    }
  }
  return { library: withStitches(builtIn, read), own: new Set(read.keys()), wrong };
}

/** A dictionary in which these stitches stand before its own. */
export const withStitches = (library: Dictionary, own: ReadonlyMap<string, Stitch>): Dictionary => ({
  ...library,
  stitches: new LazyShelf(
    [...own.keys(), ...library.stitches.keys()],
    (name) => own.get(name) ?? library.stitches.get(name)!,
  ),
});

/** Files that a maker takes in, each with all that is wrong with it. */
export const ownRead = async (stitches: readonly OwnStitch[]): Promise<BenchAsks['readOwn']['answer']> =>
  Promise.all(
    stitches.map(async (stitch) => ({
      stitch,
      wrong: (await checkStitchFile(stitch.text, `${stitch.name}.json`)).map(complaintOf),
    })),
  );
