/** Writes the schemas in motifs/ anew: `npx tsx tests/stitches/write-schema.ts`. */
import { writeFileSync } from 'node:fs';
import { dressingSchemaText } from '../../src/formats/dressing-schema.js';
import { needlePointsSchemaText } from '../../src/formats/needle-points-schema.js';
import { treatmentSchemaText } from '../../src/formats/treatment-schema.js';
import { schemaTexts } from '../../src/stitches/schema.js';

schemaTexts().then((texts) => {
  const all = {
    ...texts,
    treatment: treatmentSchemaText(),
    dressing: dressingSchemaText(),
    'needle-points': needlePointsSchemaText(),
  };
  for (const [kind, text] of Object.entries(all)) {
    writeFileSync(new URL(`../../motifs/${kind}.schema.json`, import.meta.url), text);
  }
});
