import { describe, expect, test } from 'vitest';
import { dress } from '../../src/dress.js';
import { defaultDressing } from '../../src/plan.js';
import { mapOfLines } from '../fit/block-of-lines.js';
import { builtIn } from '../stitches/dictionary.js';

/** Four seams round a square, each butting into the next: a pinwheel. */
const pinwheel = (x: number, y: number) =>
  [
    [20, 80, 20, 20],
    [0, 20, 60, 20],
    [60, 0, 60, 60],
    [80, 60, 20, 60],
  ].map(([x0, y0, x1, y1]) => [[x + x0, y + y0] as const, [x + x1, y + y1] as const]);

describe('treatments that tuck under each other in a ring', () => {
  test('are opened at one end in each ring, and every such end is named', () => {
    const map = mapOfLines([...pinwheel(0, 0), ...pinwheel(90, 90)], 200, 200);
    const block = {
      name: 'pinwheels',
      map,
      existing: null,
      stops: [],
      origin: [0, 0],
      findings: [],
    } as const;
    const source = { file: 'block.svg', stops: null, snap: 0.3, through: [] };
    const dressing = defaultDressing(map, { source, dictionary: builtIn });
    const { lines, findings } = dress(block, dressing, builtIn);
    const rings = findings.filter(({ code }) => code === 'ring-of-tucks');
    expect(rings).toHaveLength(2);
    const opened = new Set(rings.map(({ seam }) => seam));
    const sewn = new Map(lines.map(({ fit }, i) => [fit.seam, i]));
    const late = map.junctions.flatMap(({ arms, through }) =>
      arms.filter(({ seam }) => through !== null && seam !== through && sewn.get(seam)! > sewn.get(through)!),
    );
    expect(late).toHaveLength(2);
    for (const { seam } of late) expect(opened).toContain(seam);
  });
});
