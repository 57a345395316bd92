import { type Static, type TSchema, type TUnsafe, Type } from '@sinclair/typebox';
import { DRESSING_VERSION } from './dressing.js';

/**
 * The dressing file as JSON Schema. Each description ends the sentence "... is not", so it says what a value should be.
 * This module loads the schema library; import it only when a dressing is read.
 */
const record = <T extends Record<string, TSchema>>(properties: T) =>
  Type.Object(properties, { additionalProperties: false, description: 'an object in braces' });
const list = <T extends TSchema>(item: T, description: string, minItems = 0) =>
  Type.Array(item, { description, minItems });
const orNull = <T extends TSchema>(schema: T) =>
  Type.Union([schema, Type.Null()], { description: `${schema.description} or null` });
const oneOf = <T extends string[]>(...words: [...T]) =>
  Type.Union(
    words.map((word) => Type.Literal(word)),
    { description: spoken(words.map((word) => `"${word}"`)) },
  ) as unknown as TUnsafe<T[number]>;
const spoken = (words: string[]): string =>
  [words.slice(0, -1).join(', '), words[words.length - 1]].join(' or ');

const text = (description: string) => Type.String({ minLength: 1, description });
const whole = (minimum: number, maximum: number) =>
  Type.Integer({ minimum, maximum, description: `a whole number from ${minimum} to ${maximum}` });
const length = (minimum: number, maximum: number) =>
  Type.Number({ minimum, maximum, description: `a length from ${minimum} to ${maximum} mm` });
/** a stitch file reaches 9999.9 mm */
const point = Type.Tuple([length(-10_000, 10_000), length(-10_000, 10_000)], {
  description: 'a point [x, y] in mm',
});
const stopNumber = whole(1, 1000);
const seamNumber = whole(1, 1_000_000);

const manner = oneOf('tuck', 'bevel', 'short');
const outline = Type.Literal('outline');

const row = record({
  stitch: text('the name of a stitch'),
  parameters: Type.Record(Type.String(), Type.Number({ description: 'a number' }), {
    description: 'an object of numbers by name',
  }),
  thread: whole(0, 999),
  passes: whole(1, 20),
  offset: length(-100, 100),
});

const treatment = record({
  seam: record({
    id: Type.Union([seamNumber, outline], { description: 'the number of a seam or "outline"' }),
    middle: orNull(point),
    ends: orNull(Type.Tuple([point, point], { description: 'two points' })),
  }),
  rows: list(row, 'a list of at least one row', 1),
  ends: orNull(manner),
  side: orNull(oneOf('left', 'right')),
  reverse: Type.Boolean({ description: 'true or false' }),
});

export const dressingSchema = Type.Object(
  {
    format: Type.Literal('seamwright-dressing', { description: '"seamwright-dressing"' }),
    version: Type.Literal(DRESSING_VERSION, { description: `${DRESSING_VERSION}` }),
    block: record({
      file: text('the path of a drawing or stitch file'),
      stops: orNull(list(stopNumber, 'a list of at least one stop', 1)),
      snap: length(0, 10),
      through: list(record({ at: point, seam: seamNumber }), 'a list of points and seams'),
    }),
    ends: manner,
    outline: oneOf('trim', 'join', 'free'),
    gap: length(0, 10),
    treatments: list(treatment, 'a list of treatments'),
    threads: list(
      record({
        name: text('the name of a thread'),
        hex: Type.String({ pattern: '^#[0-9a-fA-F]{6}$', description: 'a color like "#b8860b"' }),
        weight: text('a weight like "No. 40"'),
      }),
      'a list of threads',
    ),
    hoop: orNull(record({ width: length(1, 10_000), height: length(1, 10_000) })),
    after: orNull(stopNumber),
    seed: whole(0, 2 ** 32 - 1),
  },
  { $id: 'seamwright-dressing', additionalProperties: false, description: 'an object in braces' },
);

export type DressingRecord = Static<typeof dressingSchema>;
