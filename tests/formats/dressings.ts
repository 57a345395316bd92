import fc from 'fast-check';
import { type Dressing, HAND_THREADS, type Weighted } from '../../src/formats/dressing.js';
import { ROLES } from '../../src/formats/stop-roles.js';

/** A dressing as a maker might have one. */
export const apron: Dressing = {
  format: 'seamwright-dressing',
  version: 1,
  block: { file: 'apron.svg', stops: null, snap: 0.3, through: [{ at: [41.2, 60], seam: 3 }] },
  ends: 'tuck',
  outline: 'trim',
  gap: 0.6,
  treatments: [
    {
      seam: {
        id: 1,
        middle: [30, 40.5],
        ends: [
          [10, 40],
          [50, 41],
        ],
      },
      rows: [
        { stitch: 'feather', parameters: { width: 8, repeat: 6 }, thread: 0, passes: 3, offset: 0 },
        { stitch: 'lazy-daisy', parameters: {}, thread: 1, passes: 2, offset: -4.5 },
      ],
      ends: null,
      side: 'left',
      reverse: false,
    },
    {
      seam: { id: 'outline', middle: null, ends: null },
      rows: [{ stitch: 'blanket', parameters: { width: 5 }, thread: 1, passes: 3, offset: 0 }],
      ends: 'short',
      side: null,
      reverse: true,
    },
  ],
  threads: [
    { name: 'old gold', hex: '#b8860b', weight: 'No. 40' },
    { name: 'moss', hex: '#556B2F', weight: 'No. 12' },
  ],
  hoop: { width: 130, height: 180 },
  after: null,
  seed: 1,
};

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((n) => n + 0);
const point = fc.tuple(number(-10_000, 10_000), number(-10_000, 10_000));
const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
const text = fc.string({ minLength: 1, maxLength: 12, unit: 'binary' });
const limit = (min: number) =>
  fc.tuple(number(min, 100), number(min, 100)).map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
const weight = fc.constantFrom('No. 40', 'no 12', '60', '30 wt');
const manner = fc.constantFrom('tuck' as const, 'bevel' as const, 'short' as const);
const seam = fc.integer({ min: 1, max: 1_000_000 });
const stop = fc.integer({ min: 1, max: 1000 });
const reference = fc.record({
  id: fc.oneof(seam, fc.constant('outline' as const)),
  middle: orNull(point),
  ends: orNull(fc.tuple(point, point)),
});

const parameters = fc.dictionary(fc.constantFrom('repeat', 'width', 'arms', '7', 'ä'), number(-1e9, 1e9));
const threadsNamed = (threads: number) => ({
  thread: fc.integer({ min: 0, max: threads - 1 }),
  moreThreads: fc.array(fc.integer({ min: 0, max: threads - 1 }), { maxLength: 2 }),
  passes: fc.integer({ min: 1, max: 20 }),
});
/** What says its weight in passes says it as a hand's thread now and then. */
const weighing = <T extends { readonly passes: number }>(arbitrary: fc.Arbitrary<T>) =>
  fc
    .tuple(arbitrary, fc.option(fc.constantFrom(...HAND_THREADS)))
    .map(([{ passes, ...rest }, heavy]): Omit<T, 'passes'> & Weighted =>
      heavy === null ? { ...rest, passes } : { ...rest, heavy },
    );
const row = (threads: number) =>
  weighing(
    fc.record(
      {
        stitch: text,
        parameters,
        ...threadsNamed(threads),
        offset: number(-50, 50),
        flip: fc.boolean(),
        times: fc.constantFrom(0.5, 1, 2),
        step: number(0, 0.99),
      },
      { requiredKeys: ['stitch', 'parameters', 'thread', 'passes', 'offset'] },
    ),
  );
const accent = (threads: number) =>
  weighing(
    fc.record(
      {
        row: fc.constant(0),
        seat: text,
        parameters,
        graded: fc.array(parameters, { minLength: 1, maxLength: 3 }),
        ...threadsNamed(threads),
        every: fc.integer({ min: 1, max: 100 }),
        from: fc.integer({ min: 0, max: 99 }),
        turn: number(-360, 360),
        away: number(-20, 20),
      },
      { requiredKeys: ['row', 'seat', 'parameters', 'thread', 'passes'] },
    ),
  ).chain((rest) =>
    fc.oneof(
      text.map((ornament) => ({ ...rest, ornament })),
      text.map((byHand) => ({ ...rest, ornament: null, byHand })),
    ),
  );
const treatment = (threads: number) =>
  fc.record(
    {
      seam: reference,
      rows: fc.array(row(threads), { minLength: 1, maxLength: 3 }),
      accents: fc.array(accent(threads), { maxLength: 2 }),
      laid: orNull(
        fc.record({
          name: text,
          width: number(1, 30),
          hex: fc.constant('#7a2f3b'),
          thread: fc.integer({ min: 0, max: threads - 1 }),
        }),
      ),
      ends: fc.oneof(orNull(manner), fc.tuple(orNull(manner), orNull(manner))),
      side: orNull(fc.constantFrom('left' as const, 'right' as const)),
      reverse: fc.boolean(),
      pinned: fc.boolean(),
    },
    { requiredKeys: ['seam', 'rows', 'ends', 'side', 'reverse'] },
  );

/** Any dressing that may stand in a file. */
export const dressingArbitrary: fc.Arbitrary<Dressing> = fc.integer({ min: 1, max: 4 }).chain((threads) =>
  fc.record(
    {
      format: fc.constant('seamwright-dressing' as const),
      version: fc.constant(1),
      block: fc.record(
        {
          file: text,
          svg: text,
          digest: fc.constant(`sha256:${'0123456789abcdef'.repeat(4)}`),
          stops: orNull(fc.array(stop, { minLength: 1, maxLength: 4 })),
          snap: number(0, 10),
          through: fc.array(fc.record({ at: point, seam }), { maxLength: 3 }),
          join: fc.array(fc.record({ at: point, seams: fc.tuple(seam, seam) }), { maxLength: 2 }),
          split: fc.array(fc.record({ at: point, seam }), { maxLength: 2 }),
          scale: fc.oneof(number(0.05, 20), fc.constant('hoop' as const)),
          turn: number(-360, 360),
          leaveOut: fc.array(stop, { maxLength: 2 }),
          roles: fc.array(fc.record({ stop, role: fc.constantFrom(...ROLES) }), { maxLength: 2 }),
        },
        { requiredKeys: ['file', 'stops', 'snap', 'through'] },
      ),
      ends: manner,
      outline: fc.constantFrom('trim' as const, 'join' as const, 'free' as const),
      gap: number(0, 10),
      treatments: fc.array(treatment(threads), { maxLength: 4 }),
      ornaments: fc.array(
        weighing(
          fc.record(
            {
              ornament: text,
              at: point,
              turn: number(-360, 360),
              parameters,
              ...threadsNamed(threads),
              pinned: fc.boolean(),
            },
            { requiredKeys: ['ornament', 'at', 'parameters', 'thread', 'passes'] },
          ),
        ),
        { maxLength: 2 },
      ),
      machine: fc.record(
        {
          needles: fc.integer({ min: 1, max: 20 }),
          stitchesPerMinute: fc.integer({ min: 50, max: 3000 }),
          heavyStitchesPerMinute: fc.integer({ min: 50, max: 3000 }),
          trimSeconds: number(0, 120),
          changeMinutes: number(0, 60),
        },
        { requiredKeys: [] },
      ),
      hooping: fc.record(
        {
          outline: fc.boolean(),
          basting: number(1, 50),
          align: fc.array(point, { maxLength: 3 }),
          crosses: fc.boolean(),
        },
        { requiredKeys: [] },
      ),
      threads: fc.array(fc.record({ name: text, hex: fc.constantFrom('#000000', '#b8860B'), weight }), {
        minLength: threads,
        maxLength: threads,
      }),
      hoop: orNull(fc.record({ width: number(1, 10_000), height: number(1, 10_000) })),
      after: orNull(fc.integer({ min: 1, max: 1000 })),
      seed: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
      stopPer: fc.constantFrom('row' as const, 'thread' as const, 'all' as const),
      pull: number(0, 0.6),
      density: fc.record(
        {
          cloth: fc.constantFrom('firm' as const, 'fine' as const),
          holes: limit(0.5),
          layers: limit(0.5),
          inOneHole: limit(1),
          cover: number(0.01, 1),
        },
        { requiredKeys: [] },
      ),
      byHand: number(0, 1),
      bare: fc.array(reference, { maxLength: 2 }),
      order: fc.array(fc.oneof(seam, fc.constant('outline' as const)), { maxLength: 3 }),
      library: text,
    },
    {
      requiredKeys: [
        'format',
        'version',
        'block',
        'ends',
        'outline',
        'gap',
        'treatments',
        'threads',
        'hoop',
        'after',
        'seed',
      ],
    },
  ),
);
