import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkStitchFile } from '../../src/stitches/check.js';
import { stitchFromDrawing } from '../../src/stitches/from-drawing.js';
import { parseStitch } from '../../src/stitches/parse.js';

const drawing = (content: string, transform = '') =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40"><g transform="${transform}">${content}</g></svg>`;
/** A blanket arm on a heading, 6 mm a repeat, drawn to the left hand of the seam. */
const blanket = `
  <line id="seam" x1="5" y1="20" x2="11" y2="20"/>
  <line id="arm" x1="5" y1="20" x2="5" y2="15"/>
  <line passes="0" x1="5" y1="15" x2="5" y2="20"/>
  <path id="heading" d="M5 20 Q8 20.5 11 20"/>`;
const taken = (content: string, transform?: string) =>
  stitchFromDrawing(drawing(content, transform), 'Mine', 'my.svg');
const refused = (content: string) => {
  try {
    taken(content);
  } catch (error) {
    return (error as Error).message;
  }
  return '';
};

describe('a stitch taken from a drawing of one repeat', () => {
  test('is sound, as long as the seam line, and has the legs in the order drawn', async () => {
    const record = taken(blanket.replaceAll('<line passes', '<line id="dip" passes'));
    expect((await checkStitchFile(record, 'mine')).map(({ message }) => message)).toEqual([]);
    expect(record.parameters.repeat.default).toBe(6);
    const unit = parseStitch(record, 'mine').build({});
    expect(unit.legs.map(({ name, kind }) => `${name}: ${kind}`)).toEqual([
      'arm: straight',
      'dip: under',
      'heading: curve',
    ]);
    expect(unit.joins).toHaveLength(1);
  });

  test('is the same stitch wherever and however turned it is drawn', () => {
    const [plain] = [parseStitch(taken(blanket), 'mine').build({})];
    fc.assert(
      fc.property(fc.integer({ min: -180, max: 180 }), (degrees) => {
        const turned = parseStitch(taken(blanket, `rotate(${degrees} 20 20)`), 'mine').build({});
        return turned.legs.every(({ path }, k) =>
          path.every((value, i) => Math.abs(value - plain.legs[k].path[i]) < 0.01),
        );
      }),
    );
  });

  test('grows with repeat and width', () => {
    const stitch = parseStitch(taken(blanket), 'mine');
    const { nodes } = stitch.build({ repeat: 9, width: 8 });
    const us = [...nodes].filter((_, i) => i % 2 === 0);
    const vs = [...nodes].filter((_, i) => i % 2 === 1);
    expect(Math.max(...us)).toBeCloseTo(9, 3);
    // on one side of the seam the width is how far its arms reach
    expect(Math.max(...vs)).toBeCloseTo(8, 3);
  });

  test('passes become shares, groups keep their shape, and what hangs loose is detached', () => {
    const bud = '<g><path id="bud" passes="2" d="M8 14C7 12 7 11 8 10C9 11 9 12 8 14Z"/></g>';
    const content = blanket.replace('</g>', '') + bud;
    const record = stitchFromDrawing(
      `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40">${content}</svg>`,
      'Mine',
      'my.svg',
    );
    const buds = record.legs.filter((leg) => 'name' in leg && leg.name.startsWith('bud'));
    expect(buds).toHaveLength(2);
    expect(buds.every((leg) => 'share' in leg && leg.share === 0.67 && leg.keepsShapeAt !== undefined)).toBe(
      true,
    );
    expect(record.detached).toBe(true);
  });

  test.each([
    ['<line id="arm" x1="5" y1="20" x2="5" y2="15"/>', 'no line is marked as the seam'],
    ['<line id="seam" x1="5" y1="20" x2="11" y2="20"/>', 'nothing is drawn beside the seam'],
    [
      '<path id="seam" d="M5 20Q8 22 11 20"/><line x1="5" y1="20" x2="5" y2="15"/>',
      'no single straight line',
    ],
    [blanket.replace('passes="0"', 'passes="two"'), 'passes is "two"'],
  ])('%s is refused with its place', (content, words) => {
    expect(refused(content)).toContain('my.svg');
    expect(refused(content)).toContain(words);
  });
});
