import { parseTreatment } from '../../src/formats/treatment.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import { LazyShelf } from '../../src/stitches/lazy-shelf.js';
import { parseOrnament, parseStitch } from '../../src/stitches/parse.js';

type Files = Record<string, string>;
// the bundler reads these options as they stand
const stitches = import.meta.glob('../../motifs/stitches/*.json', {
  eager: true,
  query: '?raw',
  import: 'default',
}) as Files;
const ornaments = import.meta.glob('../../motifs/ornaments/*.json', {
  eager: true,
  query: '?raw',
  import: 'default',
}) as Files;
const treatments = import.meta.glob('../../motifs/treatments/*.json', {
  eager: true,
  query: '?raw',
  import: 'default',
}) as Files;

/** The built-in library, which the page carries in itself. */
export const library: Dictionary = {
  stitches: shelf(stitches, parseStitch),
  ornaments: shelf(ornaments, parseOrnament),
  treatments: shelf(treatments, parseTreatment),
};

function shelf<T>(files: Files, parse: (text: string, name: string) => T): LazyShelf<T> {
  const byName = new Map(
    Object.entries(files)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([path, text]) => [path.replace(/^.*\/|\.json$/g, ''), text]),
  );
  return new LazyShelf(byName.keys(), (name) => parse(byName.get(name)!, name));
}

/** The file of a built-in stitch. */
export const stitchText = (name: string): string => stitches[`../../motifs/stitches/${name}.json`];
