/** Writes the schemas in motifs/ anew: `npx tsx tests/stitches/write-schema.ts`. */
import { writeFileSync } from 'node:fs';
import { schemaTexts } from '../../src/stitches/schema.js';

schemaTexts().then((texts) => {
  for (const [kind, text] of Object.entries(texts)) {
    writeFileSync(new URL(`../../motifs/${kind}.schema.json`, import.meta.url), text);
  }
});
