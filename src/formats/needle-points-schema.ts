import { Type } from '@sinclair/typebox';

/** Needle points as JSON Schema. Loads the schema library; import it only where a schema is wanted. */
const point = Type.Tuple([Type.Integer(), Type.Integer()], {
  description: 'x to the right and y down, in tenths of a millimeter, in the frame of the block',
});

const stop = Type.Object(
  {
    stop: Type.Integer({ minimum: 1, description: 'from 1, in the order of the machine' }),
    title: Type.String(),
    seams: Type.Array(Type.Union([Type.Integer({ minimum: 1 }), Type.Literal('outline')])),
    thread: Type.Union(
      [
        Type.Object(
          { name: Type.String(), hex: Type.String({ pattern: '^#[0-9a-fA-F]{6}$' }), weight: Type.String() },
          { additionalProperties: false },
        ),
        Type.Null(),
      ],
      { description: 'null for a stop that came with the block: a stitch file names no thread' },
    ),
    segments: Type.Array(Type.Array(point, { minItems: 2 }), {
      description:
        'what is sewn between two jumps: the place where the needle is brought to, then every hole in order',
    }),
  },
  { additionalProperties: false },
);

export const needlePointsSchema = Type.Object(
  { units: Type.Literal('0.1mm'), stops: Type.Array(stop) },
  { additionalProperties: false },
);

/** The schema file for programs that read needle points. */
export const needlePointsSchemaText = (): string => {
  const head = {
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'Needle points',
    description: 'Every hole of a design, color stop by color stop, as the stitch file has them.',
  };
  return `${JSON.stringify({ ...head, ...needlePointsSchema }, null, 1)}\n`;
};
