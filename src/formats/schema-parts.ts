import { type TSchema, type TUnsafe, Type } from '@sinclair/typebox';

/**
 * Parts that schemas of files which people edit are made of. Each description ends the sentence "... is not", so it says what
 * a value should be. This module loads the schema library; import it only when such a file is read.
 */
export const record = <T extends Record<string, TSchema>>(properties: T) =>
  Type.Object(properties, { additionalProperties: false, description: 'an object in braces' });
export const list = <T extends TSchema>(item: T, description: string, minItems = 0) =>
  Type.Array(item, { description, minItems });
export const orNull = <T extends TSchema>(schema: T) =>
  Type.Union([schema, Type.Null()], { description: `${schema.description} or null` });
export const oneOf = <T extends string[]>(...words: [...T]) =>
  Type.Union(
    words.map((word) => Type.Literal(word)),
    { description: spoken(words.map((word) => `"${word}"`)) },
  ) as unknown as TUnsafe<T[number]>;
const spoken = (words: string[]): string =>
  [words.slice(0, -1).join(', '), words[words.length - 1]].join(' or ');

export const text = (description: string) => Type.String({ minLength: 1, description });
export const yes = Type.Boolean({ description: 'true or false' });
export const whole = (minimum: number, maximum: number) =>
  Type.Integer({ minimum, maximum, description: `a whole number from ${minimum} to ${maximum}` });
/** mm */
export const length = (minimum: number, maximum: number) =>
  Type.Number({ minimum, maximum, description: `a length from ${minimum} to ${maximum} mm` });
/** degrees */
export const angle = Type.Number({
  minimum: -360,
  maximum: 360,
  description: 'an angle from -360 to 360',
});
/** mm; a stitch file reaches 9999.9 */
export const point = Type.Tuple([length(-10_000, 10_000), length(-10_000, 10_000)], {
  description: 'a point [x, y] in mm',
});
