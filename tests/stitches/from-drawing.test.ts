import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError, InputErrors } from '../../src/input-error.js';
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
const taken = async (content: string, transform?: string) =>
  (await stitchFromDrawing(drawing(content, transform), 'Mine', 'my.svg')).record;
/** Everything that a drawing is refused for, a line each. */
const refused = async (content: string): Promise<string[]> => {
  try {
    await taken(content);
  } catch (error) {
    if (!(error instanceof InputErrors)) throw error;
    return error.errors.map(({ message }) => message);
  }
  return [];
};

describe('a stitch taken from a drawing of one repeat', () => {
  test('is sound, as long as the seam line, and has the legs in the order drawn', async () => {
    const record = await taken(blanket.replaceAll('<line passes', '<line id="dip" passes'));
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

  test('is the same stitch wherever and however turned it is drawn', async () => {
    const plain = parseStitch(await taken(blanket), 'mine').build({});
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: -180, max: 180 }), async (degrees) => {
        const turned = parseStitch(await taken(blanket, `rotate(${degrees} 20 20)`), 'mine').build({});
        return turned.legs.every(({ path }, k) =>
          path.every((value, i) => Math.abs(value - plain.legs[k].path[i]) < 0.01),
        );
      }),
    );
  });

  test('grows with repeat and width', async () => {
    const stitch = parseStitch(await taken(blanket), 'mine');
    const { nodes } = stitch.build({ repeat: 9, width: 8 });
    const us = [...nodes].filter((_, i) => i % 2 === 0);
    const vs = [...nodes].filter((_, i) => i % 2 === 1);
    expect(Math.max(...us)).toBeCloseTo(9, 3);
    // on one side of the seam the width is how far its arms reach
    expect(Math.max(...vs)).toBeCloseTo(8, 3);
  });

  test('passes become shares, groups keep their shape, and what hangs loose is detached', async () => {
    const bud = '<g><path id="bud" passes="2" d="M8 14C7 12 7 11 8 10C9 11 9 12 8 14Z"/></g>';
    const content = blanket.replace('</g>', '') + bud;
    const { record } = await stitchFromDrawing(
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
  ])('%s is refused with its place', async (content, words) => {
    const [first, ...more] = await refused(content);
    expect(more).toEqual([]);
    expect(first).toContain('my.svg');
    expect(first).toContain(words);
  });

  test('everything that is wrong is told at once, with its line', async () => {
    const found = await refused(`
      <path id="Seam" d="M5 20H11"/>
      <g passes="2"><line x1="5" y1="20" x2="5" y2="15" passes="two"/></g>
      <line x1="5" y1="20" x2="5" y2="1O" />
      <line x1="5" y1="15" x2="5" y2="20" pases="0"/>
      <use href="#arm"/><line thread="second" x1="5" y1="15" x2="11" y2="15" passes="13"/>`);
    const lines = found.map((message) => message.replace(/; [^;]*$/, ''));
    expect(lines).toEqual([
      'my.svg line 2 (path): no line is marked as the seam, and "Seam" is not "seam"',
      'my.svg line 3 (line): passes is "two"',
      'my.svg line 3 (g): passes stands on a group',
      'my.svg line 4 (line): y2 is "1O"',
      'my.svg line 5 (line): "pases" is not known',
      'my.svg line 6 (line): "thread" is not read in a drawing',
      'my.svg line 6 (line): passes is "13"',
      'my.svg line 6 (use): a use is not read',
    ]);
  });

  test('what is wrong with a leg is told with the line it was drawn on', async () => {
    const found = await refused(`${blanket}
      <line x1="8" y1="20" x2="8" y2="19.95"/><line x1="9" y1="20" x2="9" y2="20"/>`);
    expect(found).toHaveLength(2);
    expect(found.every((message) => /^my\.svg line 6 \(line\): it is 0\.00 mm long/.test(message))).toBe(
      true,
    );
  });

  test('writing and pictures are left out, and told', async () => {
    const text = drawing(`${blanket}<text x="1" y="5">my blanket</text><style>line{}</style>`);
    const { record, notes } = await stitchFromDrawing(text, 'Mine', 'my.svg');
    expect(record.legs).toHaveLength(3);
    expect(notes).toEqual([expect.stringMatching(/^my\.svg line 5 \(text\): it is no line and is left out/)]);
  });

  test('lines of one element are legs of their own, each with a name of its own', async () => {
    const record = await taken(`<line id="seam" x1="5" y1="20" x2="11" y2="20"/>
      <path id="arms" d="M5 20V15M5 20V24M5 20H11"/>`);
    expect(record.legs.map((leg) => 'name' in leg && leg.name)).toEqual(['arms', 'arms 2', 'arms 3']);
  });

  test('a long way behind the cloth is led by points from all of it', async () => {
    const way = Array.from({ length: 40 }, (_, k) => `${5 + k / 8} ${20 - 3 * Math.sin((Math.PI * k) / 40)}`);
    const record = await taken(
      blanket.replace(/<line passes.*\/>/, `<path passes="0" d="M${way.join('L')}L11 20"/>`),
    );
    const under = record.legs.find((leg) => 'kind' in leg && leg.kind === 'under');
    const us = (under && 'via' in under ? (under.via ?? []) : []).map((name) => {
      const [u] = record.points[name] as [string, string];
      return Number(u.replace('length * ', ''));
    });
    expect(us.length).toBe(8);
    expect(Math.max(...us)).toBeGreaterThan(0.7);
  });

  test('random drawings are taken, or refused line by line', async () => {
    const number = fc.oneof(
      fc.integer({ min: 0, max: 40 }).map(String),
      fc.constantFrom('', 'x', '1e9', '-5', 'NaN', '5 5'),
    );
    const element = fc.oneof(
      fc
        .tuple(number, number, number, number)
        .map(([a, b, c, d]) => `<line x1="${a}" y1="${b}" x2="${c}" y2="${d}"/>`),
      fc.tuple(number, number).map(([a, b]) => `<path passes="${a}" d="M5 20Q${a} ${b} 11 20Z"/>`),
      fc.constantFrom(
        '<g>',
        '</g>',
        '<circle cx="8" cy="18" r="2"/>',
        '<use/>',
        '<line id="seam"/>',
        '<path d="M5 20A2 2 0 1 1 8 12"/>',
      ),
      fc.constantFrom(
        '<path id="seam" d="M5 20H11"/>',
        '<rect width="4" height="3"/>',
        '<path d=""/>',
        '<g passes="1"/>',
      ),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(element, { maxLength: 8 }), async (elements) => {
        const text = drawing(`<line class="seam" x1="5" y1="20" x2="11" y2="20"/>${elements.join('\n')}`);
        try {
          const { record } = await stitchFromDrawing(text, 'Mine', 'my.svg');
          return (await checkStitchFile(record, 'mine')).length === 0;
        } catch (error) {
          const errors = error instanceof InputErrors ? error.errors : [error];
          return errors.every(
            (one) => one instanceof InputError && one.where.startsWith('my.svg') && one.right !== '',
          );
        }
      }),
      { numRuns: 150 },
    );
  });
});
