import { describe, expect, it } from 'vitest';
import { drawingOfMap } from '../../src/block/drawing-of-map.js';
import { distanceTo, placesOn } from '../../src/block/line-nearness.js';
import { readSewnBlock, readStitchBlock } from '../../src/block/read-stitch-file.js';
import { dress } from '../../src/dress.js';
import { writeSeamDrawing } from '../../src/formats/seam-drawing.js';
import { defaultDressing } from '../../src/plan.js';
import { piecedPanel, SEAM_STOPS } from '../fixtures/pieced-panel.js';
import { builtIn } from '../stitches/dictionary.js';

const bytes = piecedPanel();
const source = { file: 'panel.dst', stops: SEAM_STOPS, snap: 0.3, through: [] };
const sewn = readStitchBlock(bytes, 'panel.dst', source);
const drawing = drawingOfMap(sewn.map);
const traced = { ...source, traced: writeSeamDrawing(drawing) };
const block = await readSewnBlock(bytes, 'panel.dst', traced);

describe('seams traced over a stitch file', () => {
  it('are read back within 0.01 mm of those that it sews, in the same frame, with the same numbers', () => {
    expect(block.map.seams).toHaveLength(sewn.map.seams.length);
    const strays = block.map.seams.flatMap((seam, i) => {
      const pair = [seam.points, sewn.map.seams[i].points];
      // both ways, so that neither lacks anything
      return [pair, [...pair].reverse()].flatMap(([a, b]) => {
        const off = distanceTo([b]);
        return placesOn([a]).map((place) => off(place, 1));
      });
    });
    expect(strays.length).toBeGreaterThan(200);
    expect(Math.max(...strays)).toBeLessThan(0.01);
    expect([block.origin, block.map.width, block.map.height]).toEqual([
      sewn.origin,
      sewn.map.width,
      sewn.map.height,
    ]);
  });

  it('leave what it sews as it is: the dressing goes in between the same records, and lies on the traced lines', async () => {
    const moved = {
      ...drawing,
      lines: drawing.lines.map((line, i) =>
        i > 0 || line.closed
          ? line
          : {
              ...line,
              nodes: line.nodes.map((node, n) =>
                n === 0 ? { ...node, at: [node.at[0] + 1, node.at[1]] as const } : node,
              ),
            },
      ),
    };
    const source = { ...traced, traced: writeSeamDrawing(moved) };
    const over = await readSewnBlock(bytes, 'panel.dst', source);
    const designOn = (one: typeof over) =>
      dress(one, defaultDressing(one.map, { source, dictionary: builtIn, stitch: 'feather' }), builtIn)
        .design;
    const [plain, design] = [designOn(sewn), designOn(over)];
    expect(design.before).toEqual(plain.before);
    expect(design.after).toEqual(plain.after);
    expect(design.origin).toEqual(plain.origin);
    expect(design.stops[0].runs.xy).not.toEqual(plain.stops[0].runs.xy);
  });
});
