import type { TObject, TSchema } from '@sinclair/typebox';
import type { LegKind } from './stitch.js';

/** The form of a stitch file, as JSON Schema. Each description says what would be right, for people and for messages. */
export interface StitchSchemas {
  /** the whole file, as published for editors */
  readonly file: TObject;
  /** the file with its legs left open, and the form of each kind of leg: so that a message speaks of one kind only */
  readonly frame: TObject;
  readonly legs: Readonly<Record<LegKind, TObject>>;
}

/** Builds the schemas. The schema library is slow to load, so that it is loaded here and nowhere else. */
export async function stitchSchemas(): Promise<StitchSchemas> {
  const { Type } = await import('@sinclair/typebox');
  const closed = { additionalProperties: false };
  const text = (description: string) => Type.String({ minLength: 1, maxLength: 300, description });
  const oneOf = (...words: string[]) =>
    Type.Union(
      words.map((word) => Type.Literal(word)),
      { description: `one of ${words.map((word) => `"${word}"`).join(', ')}` },
    );
  const dictionary = <T extends TSchema>(pattern: string, value: T, most: number, description: string) =>
    Type.Record(Type.String({ pattern }), value, { ...closed, maxProperties: most, description });

  const quantityName = '^[a-z][A-Za-z0-9]{0,30}$';
  const placeName = '^[A-Za-z][A-Za-z0-9 -]{0,40}$';
  const yes = Type.Boolean({ description: 'true or false' });
  const number = (description: string) => Type.Number({ minimum: -1000, maximum: 1000, description });
  const size = (description: string) => Type.Number({ exclusiveMinimum: 0, maximum: 1000, description });
  const arithmetic = Type.Union([number('a number'), Type.String({ minLength: 1, maxLength: 200 })], {
    description: 'a number, or arithmetic such as "width / 2"',
  });
  const place = Type.Tuple([arithmetic, arithmetic], {
    description: '[u, v]: along the line and across it, in mm, each a number or arithmetic',
  });
  const point = text('the name of a point');
  const share = Type.Optional(
    Type.Number({ minimum: 0, maximum: 4, description: "share of the row's weight in thread, 0 to 4" }),
  );
  const anchor = Type.Optional(text('the name of the point the leg keeps its shape at'));

  const common = {
    name: text('a name of its own'),
    share,
    keepsShapeAt: anchor,
    onlyAtEnd: Type.Optional(yes),
  };
  const fromTo = { from: point, to: point };
  const via = (least: number, most: number, description: string) =>
    Type.Array(point, { minItems: least, maxItems: most, description });
  const leg = <T extends Record<string, TSchema>>(kind: LegKind, rest: T) =>
    Type.Object({ kind: Type.Literal(kind), ...common, ...rest }, closed);
  const control = 'one or two control points';
  const legs = {
    straight: leg('straight', fromTo),
    curve: leg('curve', { ...fromTo, via: via(1, 2, control) }),
    loop: leg('loop', { base: point, tip: point, width: arithmetic }),
    knot: leg('knot', { at: point, size: arithmetic }),
    petal: leg('petal', { base: point, tip: point, width: arithmetic }),
    cord: leg('cord', { ...fromTo, via: Type.Optional(via(1, 2, control)), width: arithmetic }),
    under: leg('under', {
      ...fromTo,
      via: Type.Optional(via(1, 8, 'points it is led through')),
      beneath: Type.Optional(text('the name of the leg it lies beneath')),
    }),
  };

  const frame = {
    $schema: Type.Optional(text('the place of this schema, for editors')),
    format: Type.Literal(1, { description: '1, the only format so far' }),
    title: text('the name people know it by'),
    otherNames: Type.Array(text('a name'), { maxItems: 20, description: 'a list of names, possibly empty' }),
    family: text('the family of stitches it belongs to'),
    for: text('what it is for, a sentence'),
    sources: Type.Array(text('author, title, year, figure'), {
      maxItems: 20,
      description: 'a list of sources: author, title, year, figure',
    }),
    parameters: dictionary(
      quantityName,
      Type.Object(
        {
          title: text('what it is, for people'),
          unit: oneOf('mm', 'degree', 'count', 'share'),
          default: number('a number from min to max'),
          min: number('a number'),
          max: number('a number'),
        },
        closed,
      ),
      20,
      'parameters by name, a small letter first; at least "repeat" and "width"',
    ),
    measures: Type.Optional(
      dictionary(
        quantityName,
        arithmetic,
        100,
        'quantities by name, a small letter first, each may use those before it',
      ),
    ),
    symmetry: oneOf('none', 'mirror', 'glide'),
    halves: yes,
    corner: oneOf('turn', 'round', 'break'),
    growth: oneOf('on', 'mirror'),
    smallest: Type.Object(
      { repeat: size('a length above 0 mm'), width: size('a length above 0 mm') },
      { ...closed, description: '{ "repeat": mm, "width": mm }' },
    ),
    points: dictionary(
      placeName,
      place,
      400,
      'points by name: letters, figures, spaces and hyphens, a letter first',
    ),
    joins: dictionary(
      placeName,
      point,
      40,
      'point of this unit: the point of the next that is the same hole',
    ),
    closing: Type.Optional(
      Type.Array(text('the name of a leg'), { maxItems: 40, description: 'a list of legs' }),
    ),
    seats: Type.Optional(
      dictionary(
        placeName,
        Type.Union([point, place], { description: 'the name of a point, or [u, v]' }),
        60,
        'seats by name: the name of a point, or [u, v]',
      ),
    ),
  };
  const list = { minItems: 1, maxItems: 200, description: 'a list of legs in the order a hand works them' };
  return {
    file: Type.Object(
      { ...frame, legs: Type.Array(Type.Union(Object.values(legs)), list) },
      {
        ...closed,
        $schema: 'http://json-schema.org/draft-07/schema#',
        title: 'A hand stitch',
        description:
          'One repeat of a stitch (half of one in a glide), with its parameters. Lengths in mm, angles in degrees.',
      },
    ),
    frame: Type.Object(
      {
        ...frame,
        legs: Type.Array(Type.Object({ kind: oneOf(...Object.keys(legs)) }, { description: 'a leg' }), list),
      },
      { ...closed, description: 'a stitch: { "format": 1, "title": ... }' },
    ),
    legs,
  };
}

/** The schema file that editors use while a stitch is written by hand. */
export async function stitchSchemaText(): Promise<string> {
  return `${JSON.stringify((await stitchSchemas()).file, null, 1)}\n`;
}
