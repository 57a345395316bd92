import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { splitAfter } from '../../src/design/existing.js';
import { needlePoints, needlePointsOf } from '../../src/design/needle-points.js';
import { writeDesign } from '../../src/design/write-design.js';
import { readDst } from '../../src/formats/dst-read.js';
import type { NeedlePoints } from '../../src/formats/needle-points.js';
import { stopsOf } from '../../src/formats/stops.js';
import { littleRecords } from '../formats/little-dst.js';
import { designArbitrary, designOf, stop } from './designs.js';

describe('needle points as JSON', () => {
  it('are the holes of the stitch file, moved by the whole steps of the origin', () => {
    fc.assert(
      fc.property(designArbitrary, ({ runs, origin }) => {
        const design = designOf(runs, origin);
        const [ox, oy] = origin.map((o) => Math.round(o * 10));
        const holes: string[] = [];
        let [x, y] = [0, 0];
        for (const { kind, dx, dy } of littleRecords(writeDesign(design))) {
          x += dx;
          y -= dy;
          if (kind === 'stitch') holes.push(`${x - ox} ${y - oy}`);
        }
        const told = needlePointsOf(design).stops.flatMap((s) =>
          s.segments.flatMap((segment) => segment.slice(1)),
        );
        expect(told.map((at) => at.join(' '))).toEqual(holes);
      }),
    );
  });

  it('are the same read back from the stitch file and from the JSON text', () => {
    fc.assert(
      fc.property(designArbitrary, ({ runs, origin }) => {
        const design = designOf(runs, origin);
        const written = JSON.parse(needlePoints(design)) as NeedlePoints;
        expect(written).toEqual(needlePointsOf(design));
        const [ox, oy] = origin.map((o) => Math.round(o * 10));
        const file = stopsOf(readDst(writeDesign(design), 'x'));
        const points = file.map((one) =>
          one.runs.map((run) =>
            Array.from({ length: run.length / 2 }, (_, i) => [
              Math.round(10 * run[2 * i]) - ox,
              Math.round(10 * run[2 * i + 1]) - oy,
            ]),
          ),
        );
        // a file without a stitch has one stop, and tells nothing of it
        if (design.stops.length > 0) expect(written.stops.map(({ segments }) => segments)).toEqual(points);
      }),
    );
  });

  it('lie within half a step of what was asked for, in the frame of the block, y down', () => {
    const design = designOf(
      [
        [
          [
            [12.34, 56.78],
            [13.34, 58.71],
          ],
        ],
      ],
      [-65, -90],
    );
    expect(needlePointsOf(design).stops[0].segments).toEqual([
      [
        [123, 568],
        [133, 587],
      ],
    ]);
  });

  it('are text in the shape that programs are told, one line a segment', () => {
    const text = needlePoints(
      designOf([
        [
          [
            [1, 2],
            [3, 4],
          ],
          [
            [9, 2],
            [9, 4],
          ],
        ],
        [],
      ]),
    );
    expect(JSON.parse(text)).toEqual({
      units: '0.1mm',
      stops: [
        {
          stop: 1,
          title: 'stop 1',
          seams: [1],
          thread: { name: 'old gold', hex: '#b8860b', weight: 'No. 40' },
          segments: [
            [
              [10, 20],
              [30, 40],
            ],
            [
              [90, 20],
              [90, 40],
            ],
          ],
        },
        {
          stop: 2,
          title: 'stop 2',
          seams: [1],
          thread: { name: 'old gold', hex: '#b8860b', weight: 'No. 40' },
          segments: [],
        },
      ],
    });
    expect(text.split('\n').filter((line) => line.includes('[[') && !line.includes('stop'))).toHaveLength(2);
    expect(JSON.parse(needlePoints(designOf([])))).toEqual({ units: '0.1mm', stops: [] });
  });

  it('number stops as the machine does: those that came with the block stand among them, without a thread', () => {
    const old = designOf([
      [
        [
          [0, 0],
          [2, 0],
        ],
      ],
      [
        [
          [2, 0],
          [2, 2],
        ],
      ],
    ]);
    const { before, after } = splitAfter(readDst(writeDesign(old), 'x'), 1);
    const design: Design = {
      before,
      after,
      stops: [
        stop(
          [
            [
              [9, 0],
              [8, 0],
            ],
          ],
          'feather',
        ),
      ],
      origin: [-1, 0],
      name: 'x',
    };
    const { stops } = needlePointsOf(design);
    expect(stops.map((s) => [s.stop, s.title, s.thread?.name, s.segments])).toEqual([
      [
        1,
        'as it came with the block',
        undefined,
        [
          [
            [10, 0],
            [30, 0],
          ],
        ],
      ],
      [
        2,
        'feather',
        'old gold',
        [
          [
            [90, 0],
            [80, 0],
          ],
        ],
      ],
      [
        3,
        'as it came with the block',
        undefined,
        [
          [
            [30, 0],
            [30, 20],
          ],
        ],
      ],
    ]);
  });
});
