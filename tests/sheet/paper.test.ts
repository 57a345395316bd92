import { describe, expect, it } from 'vitest';
import { PAPERS } from '../../src/sheet/page-sizes.js';
import { brokenLines, newPaper } from '../../src/sheet/paper.js';

const style = { size: 3.2 };

describe('paper', () => {
  it('gives the same bytes for the same drawing', async () => {
    const draw = async () => {
      const paper = await newPaper({ title: 'Panel' });
      const page = paper.addPage(PAPERS.a4);
      page.text('Feather, seam 6', 20, 20, style);
      page.disc(50, 50, 3, '#a3282f');
      return paper.bytes();
    };
    expect(await draw()).toEqual(await draw());
  });

  it('breaks text into lines that fit, and loses no word', async () => {
    const paper = await newPaper({ title: '' });
    const text = 'The treatment tucks under the other, and is sewn before it. '.repeat(5).trim();
    const lines = paper.lines(text, 40, style);
    expect(lines.length).toBeGreaterThan(5);
    expect(lines.filter((line) => paper.width(line, style) > 40)).toEqual([]);
    expect(lines.join(' ')).toBe(text);
  });

  it('breaks inside a word only where it is too long for a line by itself', () => {
    const ten = (part: string) => part.length;
    expect(brokenLines('a long unbrokenword end', 8, ten)).toEqual(['a long', 'unbroken', 'word end']);
    expect(brokenLines('one\ntwo', 8, ten)).toEqual(['one', 'two']);
    expect(brokenLines('', 8, ten)).toEqual(['']);
  });

  it('measures Helvetica by its published widths: 556 thousandths for a figure, 278 for a space', async () => {
    // Adobe Core 14 AFM, Helvetica: from memory
    const paper = await newPaper({ title: '' });
    expect(paper.width('0123456789', { size: 10 })).toBeCloseTo(55.6, 6);
    expect(paper.width(' ', { size: 1 })).toBeCloseTo(0.278, 6);
  });
});
