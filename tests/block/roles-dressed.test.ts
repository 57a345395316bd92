import { describe, expect, it } from 'vitest';
import { readStitchBlock } from '../../src/block/read-stitch-file.js';
import { recognizeStops } from '../../src/block/roles/recognize.js';
import { writeDesign } from '../../src/design/write-design.js';
import { dress } from '../../src/dress.js';
import { readDst } from '../../src/formats/dst-read.js';
import { defaultDressing } from '../../src/plan.js';
import { piecedPanel } from '../fixtures/pieced-panel.js';
import { builtIn } from '../stitches/dictionary.js';

const bytes = piecedPanel();
const before = recognizeStops(readDst(bytes, 'x.dst'));
const source = { file: 'x.dst', stops: before.seams, snap: 0.3, through: [] };
const block = readStitchBlock(bytes, 'x.dst', source);
const planOf = (stitch: string) =>
  defaultDressing(block.map, { source, dictionary: builtIn, stitch, after: before.after });

/** Stitches of the whole dictionary, as many together as the panel has seams. */
const chunks = [...builtIn.stitches.keys()].reduce<string[][]>((sum, name, i) => {
  const nth = Math.floor(i / block.map.seams.length);
  sum[nth] = [...(sum[nth] ?? []), name];
  return sum;
}, []);

describe('a panel that is dressed already', () => {
  it('has its own stops taken for what they were, and none of the stitches for a seam', () => {
    const wrong = chunks.flatMap((names) => {
      const plans = names.map(planOf);
      const treatments = plans.map((plan, i) => plan.treatments[i]);
      const [threads] = plans.map((plan) => plan.threads).sort((x, y) => y.length - x.length);
      const { design } = dress(block, { ...plans[0], threads, treatments }, builtIn);
      const { roles, seams, after } = recognizeStops(readDst(writeDesign(design), 'x.dst'));
      const added = roles.length - before.roles.length;
      const fresh = roles.slice(before.after, before.after + added);
      const own = [...roles.slice(0, before.after), ...roles.slice(before.after + added)];
      const ownWrong = own.filter(({ role }, i) => role !== before.roles[i].role);
      const freshWrong = fresh.filter(({ role }) => role !== 'other' && role !== 'fill');
      const placed = seams.join() === before.seams.join() && after === before.after;
      return ownWrong.length + freshWrong.length || !placed ? [{ names, ownWrong, freshWrong, after }] : [];
    });
    expect(wrong).toEqual([]);
  });
});
