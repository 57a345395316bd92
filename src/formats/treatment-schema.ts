import { Type } from '@sinclair/typebox';
import { threadList, workProperties } from './dressing-schema.js';
import { list, text } from './schema-parts.js';
import { TREATMENT_FORMAT } from './treatment.js';

/** The file of a saved treatment as JSON Schema. Loads the schema library; import it only when a file is checked. */
export const treatmentSchema = Type.Object(
  {
    $schema: Type.Optional(text('the place of this schema, for editors')),
    format: Type.Literal(TREATMENT_FORMAT, { description: `${TREATMENT_FORMAT}, the only format so far` }),
    title: text('the name people know it by'),
    otherNames: list(text('a name'), 'a list of names, possibly empty'),
    for: text('what it is for, a sentence'),
    sources: list(text('author, title, year, figure'), 'a list of sources'),
    threads: threadList,
    ...workProperties,
  },
  {
    additionalProperties: false,
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'A treatment',
    description:
      'Rows and accents that a seam can get, with their threads. Lengths in mm, angles in degrees.',
  },
);

/** The schema file that editors use while a treatment is written by hand. */
export const treatmentSchemaText = (): string => `${JSON.stringify(treatmentSchema, null, 1)}\n`;
