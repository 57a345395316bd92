import fc from 'fast-check';

type XY = readonly [number, number];

/** A line to work on: what kind it is, its points, and whether distances along it are exact beside it too. */
export interface LineToDress {
  readonly kind: 'straight' | 'curve' | 'corner' | 'ring' | 'square';
  readonly points: readonly XY[];
}

const length = fc.double({ min: 40, max: 120, noNaN: true });

export const straightLine = length.map(
  (along): LineToDress => ({
    kind: 'straight',
    points: [
      [30, 100],
      [30 + along, 100],
    ],
  }),
);

export const curvedLine = fc.record({ length, radius: fc.double({ min: 40, max: 90, noNaN: true }) }).map(
  (arc): LineToDress => ({
    kind: 'curve',
    points: Array.from({ length: 121 }, (_, i): XY => {
      const t = ((i / 120 - 0.5) * arc.length) / arc.radius;
      return [100 + arc.radius * Math.sin(t), 160 - arc.radius * Math.cos(t)];
    }),
  }),
);

export const corneredLine = fc
  .record({
    one: length,
    other: length,
    turn: fc.double({ min: 0.6, max: 1.7, noNaN: true }),
    left: fc.boolean(),
  })
  .map(({ one, other, turn, left }): LineToDress => {
    const angle = left ? -turn : turn;
    return {
      kind: 'corner',
      points: [
        [100 - one, 100],
        [100, 100],
        [100 + other * Math.cos(angle), 100 + other * Math.sin(angle)],
      ],
    };
  });

export const ringLine = fc.double({ min: 16, max: 45, noNaN: true }).map(
  (radius): LineToDress => ({
    kind: 'ring',
    points: Array.from({ length: 361 }, (_, i): XY => {
      const t = (2 * Math.PI * (i % 360)) / 360;
      return [100 + radius * Math.cos(t), 100 + radius * Math.sin(t)];
    }),
  }),
);

export const squareLine = fc.record({ width: length, height: length }).map(
  ({ width, height }): LineToDress => ({
    kind: 'square',
    points: [
      [40, 40],
      [40 + width, 40],
      [40 + width, 40 + height],
      [40, 40 + height],
      [40, 40],
    ],
  }),
);

export const anyLine = fc.oneof(straightLine, curvedLine, corneredLine, ringLine, squareLine);
