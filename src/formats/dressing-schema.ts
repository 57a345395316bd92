import { type Static, Type } from '@sinclair/typebox';
import { DENSITY_RANGES } from './density-asked.js';
import { CORNER_MANNERS, DRESSING_VERSION, HAND_THREADS, MANNERS, MOST_PULL } from './dressing.js';
import { angle, length, list, oneOf, orNull, point, record, text, whole, yes } from './schema-parts.js';
import { ROLES } from './stop-roles.js';
import { WEIGHT_PATTERN } from './thread-weight.js';

/** The dressing file as JSON Schema. This module loads the schema library; import it only when a dressing is read. */
const stopNumber = whole(1, 1000);
const seamNumber = whole(1, 1_000_000);

const speed = whole(50, 3000);
const manner = oneOf(...MANNERS);
const ends = Type.Union(
  [manner, Type.Null(), Type.Tuple([orNull(manner), orNull(manner)], { description: 'two manners' })],
  { description: `${manner.description}, null, or a list of two of these: at its start and at its end` },
);
const outline = Type.Literal('outline');

const parameters = Type.Record(Type.String(), Type.Number({ description: 'a number' }), {
  description: 'an object of numbers by name',
});
const threadNumber = whole(0, 999);
const moreThreads = Type.Optional(list(threadNumber, 'a list of thread numbers'));
/** one of the two */
const weighted = { passes: Type.Optional(whole(1, 20)), heavy: Type.Optional(oneOf(...HAND_THREADS)) };
const weight = Type.String({ pattern: WEIGHT_PATTERN, description: 'a weight like "No. 40"' });
const hex = Type.String({ pattern: '^#[0-9a-fA-F]{6}$', description: 'a color like "#b8860b"' });

const row = record({
  stitch: text('the name of a stitch'),
  parameters,
  thread: threadNumber,
  moreThreads,
  ...weighted,
  offset: length(-50, 50),
  flip: Type.Optional(yes),
  times: Type.Optional(
    Type.Union([Type.Literal(0.5), Type.Literal(1), Type.Literal(2)], { description: '0.5, 1 or 2' }),
  ),
  step: Type.Optional(
    Type.Number({ minimum: 0, exclusiveMaximum: 1, description: 'a share of a repeat, from 0 to below 1' }),
  ),
});

const accent = record({
  row: whole(0, 19),
  seat: text('the name of a seat'),
  ornament: orNull(text('the name of an ornament')),
  byHand: Type.Optional(orNull(text('what is put on by hand, such as "bead"'))),
  parameters,
  graded: Type.Optional(list(parameters, 'a list of at least one object of numbers', 1)),
  thread: threadNumber,
  moreThreads,
  ...weighted,
  every: Type.Optional(whole(1, 100)),
  from: Type.Optional(whole(0, 99)),
  turn: Type.Optional(angle),
  away: Type.Optional(length(-20, 20)),
});

/** Rows, accents and what is laid: also the heart of a saved treatment. */
export const workProperties = {
  rows: Type.Array(row, {
    description: 'a list of at least one row, twenty at most',
    minItems: 1,
    maxItems: 20,
  }),
  accents: Type.Optional(Type.Array(accent, { description: 'a list of up to forty accents', maxItems: 40 })),
  laid: Type.Optional(
    orNull(
      record({
        name: text('what is laid, such as "satin ribbon"'),
        width: length(1, 30),
        hex,
        thread: threadNumber,
      }),
    ),
  ),
  guide: Type.Optional(
    orNull(
      record({
        shape: oneOf('wave', 'scallop', 'points', 'interlace'),
        height: length(0.5, 40),
        length: length(2, 200),
      }),
    ),
  ),
};
export const threadList = list(
  record({
    name: text('the name of a thread'),
    hex,
    weight,
    moreHex: Type.Optional(list(hex, 'a list of colors')),
    code: Type.Optional(text('what a list of threads calls it')),
    finish: Type.Optional(text('a finish such as "matte"')),
  }),
  'a list of threads',
);

const placedOrnament = record({
  ornament: text('the name of an ornament'),
  at: Type.Optional(point),
  patch: Type.Optional(
    Type.Union([seamNumber, record({ at: point })], {
      description: 'the number of a patch or a place in it',
    }),
  ),
  turn: Type.Optional(
    Type.Union([angle, Type.Literal('fit')], { description: 'an angle from -360 to 360 or "fit"' }),
  ),
  parameters,
  thread: threadNumber,
  moreThreads,
  ...weighted,
  pinned: Type.Optional(yes),
});

const keptClear = record({
  name: text('what is kept clear, such as "monogram"'),
  polygon: Type.Optional(list(point, 'a list of at least three points', 3)),
  circle: Type.Optional(record({ at: point, radius: length(0.1, 10_000) })),
  stops: Type.Optional(list(stopNumber, 'a list of at least one stop', 1)),
});

const patchFabric = record({
  patch: record({ id: seamNumber, at: orNull(point) }),
  colors: list(
    record({
      hex,
      share: Type.Number({ exclusiveMinimum: 0, maximum: 1000, description: 'a share above 0' }),
    }),
    'a list of at least one color',
    1,
  ),
  busyness: Type.Optional(Type.Number({ minimum: 0, maximum: 1, description: 'a measure from 0 to 1' })),
  picture: Type.Optional(text('the name of a picture')),
});

/** from where on it is worth a look, and above what it is too much */
const limit = ({ min, max }: { readonly min: number; readonly max: number }) => {
  const number = Type.Number({ minimum: min, maximum: max, description: `a number from ${min} to ${max}` });
  return Type.Optional(
    Type.Tuple([number, number], {
      description: `two numbers from ${min} to ${max}, the lower one first: worth a look, too much`,
    }),
  );
};
const density = record({
  cloth: Type.Optional(oneOf('firm', 'fine')),
  holes: limit(DENSITY_RANGES.holes),
  layers: limit(DENSITY_RANGES.layers),
  inOneHole: limit(DENSITY_RANGES.inOneHole),
  cover: Type.Optional(
    Type.Number({
      minimum: DENSITY_RANGES.cover.min,
      maximum: DENSITY_RANGES.cover.max,
      description: 'a share from 0.01 to 1',
    }),
  ),
});

const lineNumber = Type.Union([seamNumber, outline], { description: 'the number of a seam or "outline"' });
const seamReference = record({
  id: lineNumber,
  middle: orNull(point),
  ends: orNull(Type.Tuple([point, point], { description: 'two points' })),
});
const seamAt = record({ at: point, seam: seamNumber });

const treatment = record({
  seam: seamReference,
  ...workProperties,
  ends,
  corner: Type.Optional(oneOf(...CORNER_MANNERS)),
  side: orNull(oneOf('left', 'right')),
  reverse: yes,
  pinned: Type.Optional(yes),
});

export const dressingSchema = Type.Object(
  {
    $schema: Type.Optional(text('the place of the schema, for editors')),
    format: Type.Literal('seamwright-dressing', { description: '"seamwright-dressing"' }),
    version: Type.Literal(DRESSING_VERSION, { description: `${DRESSING_VERSION}` }),
    block: record({
      file: text('the path of a drawing or stitch file'),
      stops: orNull(list(stopNumber, 'a list of at least one stop', 1)),
      snap: length(0, 10),
      svg: Type.Optional(text('the text of a drawing')),
      traced: Type.Optional(text('the text of a drawing')),
      digest: Type.Optional(
        Type.String({ pattern: '^sha256:[0-9a-f]{64}$', description: '"sha256:" and 64 hexadecimal digits' }),
      ),
      through: list(seamAt, 'a list of points and seams'),
      join: Type.Optional(
        list(
          record({
            at: point,
            seams: Type.Tuple([seamNumber, seamNumber], { description: 'the numbers of two seams' }),
          }),
          'a list of points and pairs of seams',
        ),
      ),
      split: Type.Optional(list(seamAt, 'a list of points and seams')),
      scale: Type.Optional(
        Type.Union([Type.Number({ minimum: 0.05, maximum: 20 }), Type.Literal('hoop')], {
          description: 'a factor from 0.05 to 20 or "hoop"',
        }),
      ),
      turn: Type.Optional(angle),
      leaveOut: Type.Optional(list(stopNumber, 'a list of stops')),
      roles: Type.Optional(
        list(
          Type.Object({ stop: stopNumber, role: oneOf(...ROLES) }),
          'a list of stops with what they are for',
        ),
      ),
    }),
    ends: manner,
    outline: oneOf('trim', 'join', 'free'),
    gap: length(0, 10),
    treatments: list(treatment, 'a list of treatments'),
    ornaments: Type.Optional(list(placedOrnament, 'a list of ornaments')),
    keepClear: Type.Optional(
      Type.Array(keptClear, {
        description: 'a list of up to a thousand places to keep clear',
        maxItems: 1000,
      }),
    ),
    hooping: Type.Optional(
      record({
        outline: Type.Optional(yes),
        basting: Type.Optional(length(1, 50)),
        align: Type.Optional(
          Type.Array(point, { description: 'a list of up to fifty points', maxItems: 50 }),
        ),
        crosses: Type.Optional(yes),
      }),
    ),
    fabrics: Type.Optional(
      Type.Array(patchFabric, { description: 'a list of up to ten thousand fabrics', maxItems: 10_000 }),
    ),
    threads: threadList,
    hoop: orNull(record({ width: length(1, 10_000), height: length(1, 10_000) })),
    machine: Type.Optional(
      record({
        needles: Type.Optional(whole(1, 20)),
        stitchesPerMinute: Type.Optional(speed),
        heavyStitchesPerMinute: Type.Optional(speed),
        trimSeconds: Type.Optional(
          Type.Number({ minimum: 0, maximum: 120, description: 'seconds from 0 to 120' }),
        ),
        changeMinutes: Type.Optional(
          Type.Number({ minimum: 0, maximum: 60, description: 'minutes from 0 to 60' }),
        ),
      }),
    ),
    after: orNull(stopNumber),
    stopPer: Type.Optional(oneOf('row', 'thread', 'all')),
    pull: Type.Optional(length(0, MOST_PULL)),
    density: Type.Optional(density),
    seed: whole(0, 2 ** 32 - 1),
    byHand: Type.Optional(Type.Number({ minimum: 0, maximum: 1, description: 'a measure from 0 to 1' })),
    bare: Type.Optional(list(seamReference, 'a list of seams')),
    order: Type.Optional(list(lineNumber, 'a list of seams')),
    library: Type.Optional(text('the path of a folder')),
  },
  { $id: 'seamwright-dressing', additionalProperties: false, description: 'an object in braces' },
);

/** The schema file that editors use while a dressing is edited by hand. */
export const dressingSchemaText = (): string => {
  const { $id: _, description: __, ...schema } = dressingSchema;
  const head = {
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'A dressing',
    description:
      'The saved work: a block, its treatments, threads, hoop, order. Lengths in mm, angles in degrees.',
  };
  return `${JSON.stringify({ ...head, ...schema }, null, 1)}\n`;
};

export type DressingRecord = Static<typeof dressingSchema>;
