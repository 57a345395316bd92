import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benched, benchSamples } from '../../../page/core/bench.js';
import { copyOf } from '../../../page/state/bench/fresh.js';
import { pointMoved } from '../../../page/state/bench/move-point.js';
import { textOf } from '../../../page/state/bench/text.js';
import { tiesOf } from '../../../page/state/bench/ties.js';
import { begun, changed, undone } from '../../../page/state/history.js';
import { parametersOf } from '../../../src/stitches/compile.js';
import { Copies, countsOf } from '../../../src/stitches/copies.js';
import { parseStitch } from '../../../src/stitches/parse.js';
import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { builtIn } from '../../stitches/dictionary.js';

const folder = join(import.meta.dirname, '../../../motifs/stitches');
const files = readdirSync(folder).map((file) => readFileSync(join(folder, file), 'utf8'));
const records: StitchRecord[] = files.map((text) => copyOf(text, JSON.parse(text).title));

const spotsOf = (record: StitchRecord) => {
  const { points } = new Copies(record, countsOf(parametersOf(record), {}), []);
  const seats = Object.fromEntries(points.map(({ name }) => [name, name]));
  return parseStitch({ ...record, seats, joins: {} }, 'any').build({}).seats;
};
const anyMove = fc.record({
  record: fc.constantFrom(...records),
  which: fc.nat(1000),
  du: fc.integer({ min: -30, max: 30 }).map((tenths) => tenths / 10),
  dv: fc.integer({ min: -30, max: 30 }).map((tenths) => tenths / 10),
});

describe('a stitch on the bench', () => {
  it('is saved unchanged when nothing was done to it: every stitch of the dictionary', () => {
    const changes = records.filter((record, k) => {
      const again = parseStitch(textOf(record), 'any').build({});
      return JSON.stringify(again) !== JSON.stringify(parseStitch(files[k], 'any').build({}));
    });
    expect(changes.map(({ title }) => title)).toEqual([]);
  });

  it('has a dragged point moved by just so much at its usual sizes, what hangs on it along, and nothing else', () => {
    fc.assert(
      fc.property(anyMove, ({ record, which, du, dv }) => {
        const before = spotsOf(record);
        const names = Object.keys(record.points);
        const name = names[which % names.length];
        const ties = tiesOf(record, before, name);
        const after = spotsOf(pointMoved(record, before, name, du, dv));
        const off = before.map((spot, i) => {
          const sign = ties.get(spot.name.replace(/\[.*/, ''));
          const [wantU, wantV] = sign === undefined ? [0, 0] : [du, dv * sign];
          return Math.hypot(after[i].u - spot.u - wantU, after[i].v - spot.v - wantV);
        });
        expect(Math.max(...off)).toBeLessThan(0.001);
      }),
    );
  });

  it('keeps its holes joined from one repeat to the next, whatever is dragged, at any size', () => {
    fc.assert(
      fc.property(anyMove, fc.double({ min: 0, max: 1, noNaN: true }), ({ record, which, du, dv }, share) => {
        const names = Object.keys(record.points);
        const moved = pointMoved(record, spotsOf(record), names[which % names.length], du, dv);
        const { min, max } = record.parameters.width;
        // a join that is torn is refused
        expect(() => parseStitch(moved, 'any').build({ width: min + share * (max - min) })).not.toThrow();
      }),
    );
  });

  it('is as it was after one step back', () => {
    const [record] = records;
    const moved = pointMoved(record, spotsOf(record), Object.keys(record.points)[0], 1, 1);
    expect(moved).not.toEqual(record);
    expect(undone(changed(begun(record), moved)).now).toBe(record);
  });

  it('lies on a straight seam, a curve, a corner and a ring; one that cannot be built says where it is wrong', async () => {
    const feather = records.find(({ title }) => title === 'Feather')!;
    const samples = await benchSamples();
    const well = await benched('my-feather', feather, samples, builtIn);
    expect(well.samples!.block.seams).toHaveLength(4);
    expect(well.samples!.threads.length).toBeGreaterThan(0);
    const torn = { ...feather, points: { ...feather.points, base: ['length', 'nothing'] as const } };
    const ill = await benched('my-feather', torn, samples, builtIn);
    expect(ill.unit).toBeNull();
    expect(ill.wrong[0]).toMatchObject({ wrong: '"nothing" is not a known quantity' });
    expect(ill.wrong[0].where).toContain('points.base');
  });
});
