import type { TObject, TSchema } from '@sinclair/typebox';
import type { LegKind } from './stitch.js';

/**
 * The form of stitch and ornament files, as JSON Schema. Each description says what would be right, for people and for
 * messages.
 */
export interface FigureSchemas {
  readonly stitch: FileSchemas;
  readonly ornament: FileSchemas;
  /** the form of each kind of leg: so that a message speaks of one kind only */
  readonly legs: Readonly<Record<LegKind, TObject>>;
  /** what has no known kind */
  readonly anyLeg: TObject;
  /** legs worked several times over, their legs left open */
  readonly copiedLegs: TObject;
}

export interface FileSchemas {
  /** the whole file, as published for editors */
  readonly file: TObject;
  /** the file with its legs left open */
  readonly frame: TObject;
}

/** Builds the schemas. The schema library is slow to load, so that it is loaded here and nowhere else. */
export async function figureSchemas(): Promise<FigureSchemas> {
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
  const referenceName = '^[A-Za-z][A-Za-z0-9 -]{0,40}(\\[[^\\]]{1,40}\\])?$';
  const yes = Type.Boolean({ description: 'true or false' });
  const number = (description: string) => Type.Number({ minimum: -1000, maximum: 1000, description });
  const size = (description: string) => Type.Number({ exclusiveMinimum: 0, maximum: 1000, description });
  const arithmetic = Type.Union([number('a number'), Type.String({ minLength: 1, maxLength: 200 })], {
    description: 'a number, or arithmetic such as "width / 2"',
  });
  const place = Type.Tuple([arithmetic, arithmetic], {
    description: '[u, v]: along the line and across it, in mm, each a number or arithmetic',
  });
  const point = text('the name of a point, such as "tip", or of one of its copies, such as "tip[i + 1]"');
  const count = Type.Union([number('a whole number'), Type.String({ minLength: 1, maxLength: 200 })], {
    description: 'how many copies: a whole number, or arithmetic on parameters whose unit is "count"',
  });
  const share = Type.Optional(
    Type.Number({ minimum: 0, maximum: 4, description: "share of the row's weight in thread, 0 to 4" }),
  );
  const anchor = Type.Optional(text('the name of the point the leg keeps its shape at'));

  const common = {
    name: text('a name of its own'),
    share,
    keepsShapeAt: anchor,
    onlyAtEnd: Type.Optional(yes),
    thread: Type.Optional(text('one of the names in "threads"')),
  };
  const fromTo = { from: point, to: point };
  const via = (least: number, most: number, description: string) =>
    Type.Array(point, { minItems: least, maxItems: most, description });
  const leg = <T extends Record<string, TSchema>>(kind: LegKind, rest: T) =>
    Type.Object({ kind: Type.Literal(kind), ...common, ...rest }, closed);
  const bend = {
    via: Type.Optional(via(1, 2, 'one or two control points')),
    through: Type.Optional(via(1, 200, 'points it is led through; "spiral[*]" is all copies of a point')),
  };
  const legs = {
    straight: leg('straight', fromTo),
    curve: leg('curve', { ...fromTo, ...bend }),
    loop: leg('loop', { base: point, tip: point, width: arithmetic }),
    knot: leg('knot', { at: point, size: arithmetic }),
    petal: leg('petal', { base: point, tip: point, width: arithmetic }),
    cord: leg('cord', { ...fromTo, ...bend, width: arithmetic }),
    under: leg('under', {
      ...fromTo,
      via: Type.Optional(via(1, 8, 'points it is led through')),
      beneath: Type.Optional(text('the name of the leg it lies beneath')),
    }),
  };

  const parameters = (needed: string) =>
    dictionary(
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
      `parameters by name, a small letter first; at least ${needed}`,
    );
  const length = size('a length above 0 mm');
  const figure = {
    $schema: Type.Optional(text('the place of this schema, for editors')),
    format: Type.Literal(1, { description: '1, the only format so far' }),
    title: text('the name people know it by'),
    otherNames: Type.Array(text('a name'), { maxItems: 20, description: 'a list of names, possibly empty' }),
    family: text('the family it belongs to'),
    for: text('what it is for, a sentence'),
    sources: Type.Array(text('author, title, year, figure'), {
      maxItems: 20,
      description: 'a list of sources: author, title, year, figure',
    }),
    measures: Type.Optional(
      dictionary(
        quantityName,
        arithmetic,
        100,
        'quantities by name, a small letter first, each may use those before it',
      ),
    ),
    threads: Type.Optional(
      Type.Array(text('what a thread does, such as "lacing"'), {
        minItems: 1,
        maxItems: 6,
        uniqueItems: true,
        description: 'a list of different names, one for each thread',
      }),
    ),
    points: dictionary(
      placeName,
      Type.Union([place, Type.Object({ count, at: place }, closed)], {
        description: '[u, v], or { "count": how many, "at": [u, v] } where i counts the copies from 0',
      }),
      400,
      'points by name: letters, figures, spaces and hyphens, a letter first',
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
  const stitch = {
    ...figure,
    parameters: parameters('"repeat" and "width"'),
    symmetry: oneOf('none', 'mirror', 'glide'),
    halves: yes,
    corner: oneOf('turn', 'round', 'break'),
    growth: oneOf('on', 'mirror'),
    smallest: Type.Object(
      { repeat: length, width: length },
      { ...closed, description: '{ "repeat": mm, "width": mm }' },
    ),
    detached: Type.Optional(yes),
    joins: dictionary(
      referenceName,
      point,
      40,
      'point of this unit: the point of the next that is the same hole',
    ),
    closing: Type.Optional(
      Type.Array(text('the name of a leg'), { maxItems: 40, description: 'a list of legs' }),
    ),
  };
  const ornament = {
    ...figure,
    parameters: parameters('"size"'),
    smallest: Type.Object({ size: length }, { ...closed, description: '{ "size": mm }' }),
  };
  const list = (description: string) => ({ minItems: 1, maxItems: 200, description });
  const order = list('a list of legs in the order a hand works them');
  const someLeg = Type.Union(Object.values(legs));
  const openLeg = Type.Object({ kind: oneOf(...Object.keys(legs)) }, { description: 'a leg' });
  const copied = (one: TSchema) =>
    Type.Object(
      { count, legs: Type.Array(one, order) },
      { ...closed, description: 'legs worked "count" times' },
    );
  const schemasOf = (
    rest: Record<string, TSchema>,
    title: string,
    what: string,
    right: string,
  ): FileSchemas => ({
    file: Type.Object(
      { ...rest, legs: Type.Array(Type.Union([...Object.values(legs), copied(someLeg)]), order) },
      {
        ...closed,
        $schema: 'http://json-schema.org/draft-07/schema#',
        title,
        description: `${what}, with its parameters. Lengths in mm, angles in degrees.`,
      },
    ),
    frame: Type.Object({ ...rest, legs: Type.Array(Type.Any(), order) }, { ...closed, description: right }),
  });
  return {
    stitch: schemasOf(
      stitch,
      'A hand stitch',
      'One repeat of a stitch (half of one in a glide)',
      'a stitch: { "format": 1, "title": ... }',
    ),
    ornament: schemasOf(
      ornament,
      'An ornament',
      'A free-standing figure',
      'an ornament: { "format": 1, "title": ... }',
    ),
    legs,
    anyLeg: openLeg,
    copiedLegs: copied(Type.Any()),
  };
}

/** The schema files that editors use while a stitch or an ornament is written by hand, by name. */
export async function schemaTexts(): Promise<Record<'stitch' | 'ornament', string>> {
  const { stitch, ornament } = await figureSchemas();
  const text = (schema: TObject) => `${JSON.stringify(schema, null, 1)}\n`;
  return { stitch: text(stitch.file), ornament: text(ornament.file) };
}
