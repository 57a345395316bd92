import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { dress, marksOf } from '../../src/dress.js';
import type { BlockSource } from '../../src/formats/dressing.js';
import { defaultDressing } from '../../src/plan.js';
import { dressReport } from '../../src/report/dress-report.js';
import { sewSheet } from '../../src/sheet/sew-sheet.js';
import { builtIn } from '../stitches/dictionary.js';
import { hasPoppler, pageTexts } from './poppler.js';

const source: BlockSource = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };

test.skipIf(!hasPoppler)(
  'what is put on by hand is told with its place and number, and marked in the picture',
  async () => {
    const svg = readFileSync(new URL('../../gallery/demo/panel.svg', import.meta.url), 'utf8');
    const block = await readSvgBlock(svg, 'panel.svg', source);
    const treatment = builtIn.treatments.get('feather-beads');
    const work = dress(
      block,
      defaultDressing(block.map, { source, dictionary: builtIn, treatment }),
      builtIn,
    );
    const { bytes } = await sewSheet(work, dressReport(work, []), [], { paper: 'a4' });
    const [picture, ...pages] = pageTexts(bytes);
    const table = pages.join(' ').replace(/\s+/g, ' ');
    const marks = marksOf(work);
    for (const { id } of block.map.seams) {
      const count = marks.filter(({ seam }) => seam === id).length;
      expect(table).toContain(`${count} on seam ${id}`);
    }
    expect(table).toMatch(/In the picture What Where How many a seed bead /);
    expect(table.slice(table.indexOf('seed bead'))).toMatch(new RegExp(`\\b${marks.length}\\b`));
    // a letter on each mark; some stand so close to another or to a number that a reader of text takes both for one word
    const drawn = picture.replaceAll(/\b(in|under) a\b/g, '').match(/(?<![a-z])a+(?![a-z])/g)!;
    expect(drawn.join('')).toHaveLength(marks.length);
  },
);
