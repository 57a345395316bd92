import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseStitch } from '../stitches/parse.js';
import type { Stitch } from '../stitches/stitch.js';

/** The package's own folder: two up from src/cli as from dist/cli. */
export const packageFolder = fileURLToPath(new URL('../../', import.meta.url));

/** The built-in dictionary of stitches, by name. */
export function loadLibrary(): ReadonlyMap<string, Stitch> {
  const folder = `${packageFolder}motifs/stitches/`;
  const files = readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .sort();
  return new Map(
    files.map((file) => {
      const stitch = parseStitch(
        readFileSync(folder + file, 'utf8'),
        file.replace(/\.json$/, ''),
        `motifs/stitches/${file}`,
      );
      return [stitch.name, stitch];
    }),
  );
}
