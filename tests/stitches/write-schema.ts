/** Writes motifs/stitch.schema.json anew: `npx tsx tests/stitches/write-schema.ts`. */
import { writeFileSync } from 'node:fs';
import { stitchSchemaText } from '../../src/stitches/schema.js';

stitchSchemaText().then((text) =>
  writeFileSync(new URL('../../motifs/stitch.schema.json', import.meta.url), text),
);
