import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bareBlock, redraw } from '../../../page/core/drawing.js';
import { readBlock } from '../../../page/core/read-block.js';
import { withLineFollowed } from '../../../page/state/drawing/followed.js';
import { lineOf, withNodeAt, withoutLine } from '../../../page/state/drawing/lines.js';
import { seamOf } from '../../../src/fit/seam-reference.js';
import type { BlockSource, Dressing } from '../../../src/formats/dressing.js';
import { readDressing } from '../../../src/formats/dressing-file.js';
import type { SeamDrawing } from '../../../src/formats/seam-drawing.js';
import { defaultDressing } from '../../../src/plan.js';
import { piecedPanel, SEAM_STOPS } from '../../fixtures/pieced-panel.js';
import { builtIn } from '../../stitches/dictionary.js';

const read = (source: BlockSource) => readBlock(source, null);
const demo = join(import.meta.dirname, '../../../gallery/demo');
const text = (name: string) => readFileSync(join(demo, name), 'utf8');

/** The demo panel as it is once the page has drawn on it: a drawing of its own, with nothing changed. */
const given = await readDressing(text('panel.dressing.json'), 'panel.dressing.json');
const panel: Dressing = { ...given, block: { ...given.block, svg: text('panel.svg') } };
const panelBlock = await readBlock(panel.block, null);
const { drawing, missing } = await bareBlock(panelBlock, panel);
const drawn = await redraw(panel, drawing, read);
const drawnBlock = await readBlock(drawn.block, null);

/** Which line of the block each treatment lies on, by the stitches it has. */
const linesOf = async (dressing: Dressing): Promise<readonly (number | 'outline' | null)[]> => {
  const { map } = await readBlock(dressing.block, null);
  return dressing.treatments.map(({ seam }) => {
    const found = seamOf(map, seam);
    return found === null || found === 'outline' ? found : found.id;
  });
};

/** A straight line's end or a curve's point moved, with all that follows. */
const anyMove = fc.record({
  line: fc.nat({ max: drawing.lines.length - 1 }),
  node: fc.nat(100),
  dx: fc.integer({ min: -40, max: 40 }),
  dy: fc.integer({ min: -40, max: 40 }),
});
type Move = typeof anyMove extends fc.Arbitrary<infer M> ? M : never;

function moved(from: SeamDrawing, { line, node, dx, dy }: Move): SeamDrawing {
  const { id, nodes } = from.lines[line];
  const n = node % nodes.length;
  const [x, y] = nodes[n].at;
  const at = [Math.min(130, Math.max(0, x + dx / 10)), Math.min(180, Math.max(0, y + dy / 10))] as const;
  return withLineFollowed(from, withNodeAt(lineOf(from, id)!, n, at));
}

describe('a block that is drawn anew', () => {
  it('keeps every treatment on its seam and every fabric on its patch where nothing was changed', async () => {
    expect(missing).toEqual([]);
    expect(await linesOf(drawn)).toEqual(await linesOf(panel));
    expect((await bareBlock(drawnBlock, drawn)).block.patches.map(({ fill }) => fill)).toEqual(
      (await bareBlock(panelBlock, panel)).block.patches.map(({ fill }) => fill),
    );
  });

  it('names each treatment whose line was taken out, and no other; put back it is where it was', async () => {
    for (const { id } of drawing.lines) {
      const less = await redraw(drawn, withoutLine(drawing, id), read);
      const lessBlock = await readBlock(less.block, null);
      const told = (await bareBlock(lessBlock, less)).missing;
      const lines = await linesOf(less);
      const lost = less.treatments.flatMap((_, t) => (lines[t] === null ? [t] : []));
      expect(told.map(({ treatment }) => treatment)).toEqual(lost);
      expect(lost.map((t) => drawn.treatments[t].seam.id)).toContain(id);
      for (const { stitches, treatment, nearest } of told) {
        expect(stitches).toContain(drawn.treatments[treatment].rows[0].stitch);
        expect(nearest!.off).toBeGreaterThanOrEqual(0);
      }
      const back = await redraw(less, drawing, read);
      expect(await linesOf(back)).toEqual(await linesOf(drawn));
    }
  });

  it('has treatments go along with their lines: no two come to lie on one, and what finds none is told', async () => {
    await fc.assert(
      fc.asyncProperty(anyMove, async (move) => {
        const after = await redraw(drawn, moved(drawing, move), read);
        const lines = await linesOf(after);
        const laid = lines.filter((line) => line !== null);
        expect(new Set(laid).size).toBe(laid.length);
        // what is lost, because a line came to run on in another way, is told
        const told = (await bareBlock(await readBlock(after.block, null), after)).missing;
        expect(told).toHaveLength(lines.length - laid.length);
      }),
      { numRuns: 30 },
    );
  });

  it('has a treatment go along with its line however far that is moved in one go', async () => {
    const line = drawing.lines.find(({ nodes }) => nodes.some(({ at }) => at[0] < 0.01 && at[1] > 130))!;
    const t = drawn.treatments.findIndex(({ seam }) => seam.id === line.id);
    const n = line.nodes.findIndex(({ at }) => at[0] < 0.01);
    const after = await redraw(drawn, withLineFollowed(drawing, withNodeAt(line, n, [0, 165])), read);
    const { map } = await readBlock(after.block, null);
    const found = seamOf(map, after.treatments[t].seam);
    expect(found).not.toBeNull();
    const { points } = found as Exclude<typeof found, 'outline' | null>;
    expect([points[1], points[points.length - 1]].some((y) => Math.abs(y - 165) < 0.01)).toBe(true);
    expect(after.treatments[t].rows).toEqual(drawn.treatments[t].rows);
  });

  it('has each end of a seam made as it was, to the same hand, where a moved point lets it run the other way', async () => {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="160mm" height="120mm" viewBox="0 0 160 120"><g fill="none" stroke="#000">
      <path d="M0 0H160V120H0Z"/><path d="M0 58L160 62"/></g></svg>`;
    const source: BlockSource = { file: 'block.svg', svg, stops: null, snap: 0.3, through: [] };
    const block = await read(source);
    const plain = defaultDressing(block.map, { source, dictionary: builtIn, stitch: 'blanket' });
    const told = { ends: ['short', 'tuck'], side: 'left', reverse: true } as const;
    const dressing = { ...plain, treatments: plain.treatments.map((one) => ({ ...one, ...told })) };
    const { drawing: lines } = await bareBlock(block, dressing);
    const line = lines.lines[0];
    const nth = line.nodes.findIndex(({ at }) => at[0] > 159);
    const after = await redraw(dressing, withLineFollowed(lines, withNodeAt(line, nth, [160, 54])), read);
    const [{ ends, side, reverse, seam }] = after.treatments;
    const { points } = (await read(after.block)).map.seams[0];
    // the upper end is where a seam begins: it was the left one, and is the right one now
    expect(points[0]).toBeCloseTo(160, 6);
    expect(seam.ends![0][0]).toBeCloseTo(160, 2);
    expect({ ends, side, reverse }).toEqual({ ends: ['tuck', 'short'], side: 'right', reverse: false });
    const back = await redraw(after, lines, read);
    expect(back.treatments[0]).toMatchObject(told);
  });

  it('keeps the stops of a stitch file, and the stop behind which the dressing goes in', async () => {
    const file = { name: 'panel.dst', bytes: piecedPanel() };
    const source = { file: file.name, stops: SEAM_STOPS, snap: 0.3, through: [] };
    const block = await readBlock(source, file);
    const dressing = {
      ...defaultDressing(block.map, { source, dictionary: builtIn, stitch: 'feather' }),
      after: 5,
    };
    const lines = (await bareBlock(block, dressing)).drawing;
    const after = await redraw(dressing, moved(lines, { line: 0, node: 0, dx: 20, dy: 0 }), (source) =>
      readBlock(source, file),
    );
    const traced = await readBlock(after.block, file);
    expect(traced.existing).toEqual(block.existing);
    expect(traced.origin).toEqual(block.origin);
    expect([after.block.stops, after.after]).toEqual([SEAM_STOPS, 5]);
    const [was, is] = [lines, (await bareBlock(traced, after)).drawing].map(
      ({ lines }) => lines[0].nodes[0].at,
    );
    expect(is[0]).toBeCloseTo(was[0] + 2, 2);
  });
});
