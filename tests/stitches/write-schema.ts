/** Writes the schemas in motifs/ anew: `npx tsx tests/stitches/write-schema.ts`. */
import { writeFileSync } from 'node:fs';
import { treatmentSchemaText } from '../../src/formats/treatment-schema.js';
import { schemaTexts } from '../../src/stitches/schema.js';

schemaTexts().then((texts) => {
  for (const [kind, text] of Object.entries({ ...texts, treatment: treatmentSchemaText() })) {
    writeFileSync(new URL(`../../motifs/${kind}.schema.json`, import.meta.url), text);
  }
});
