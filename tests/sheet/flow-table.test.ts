import { describe, expect, test } from 'vitest';
import { Flow, MARGIN } from '../../src/sheet/flow.js';
import { flowTable, type SheetRow } from '../../src/sheet/flow-table.js';
import { lying, PAPERS } from '../../src/sheet/page-sizes.js';
import { newPaper, type Paper } from '../../src/sheet/paper.js';
import { hasPoppler, pageTexts } from './poppler.js';

const columns = [
  { heading: 'Stop', width: 12, figures: true },
  { heading: 'What' },
  { heading: 'Seams', width: 30 },
];
const row = (n: number, what: string): SheetRow => [
  { text: String(n) },
  { text: what },
  { text: `seam ${n}` },
];

/** Where text was put on the pages, with its width, as a paper that remembers tells. */
function remembering(paper: Paper): {
  paper: Paper;
  put: { page: number; text: string; left: number; right: number; y: number }[];
} {
  const put: { page: number; text: string; left: number; right: number; y: number }[] = [];
  const addPage: Paper['addPage'] = (size) => {
    const page = paper.addPage(size);
    const number = paper.pages.length;
    return {
      ...page,
      text(text, x, y, style) {
        const width = paper.width(text, style);
        const left = x - { left: 0, center: 0.5, right: 1 }[style.align ?? 'left'] * width;
        put.push({ page: number, text, left, right: left + width, y });
        page.text(text, x, y, style);
      },
    };
  };
  return { paper: { ...paper, addPage }, put };
}

describe('a table that flows over pages', () => {
  test('keeps all text on its page and in its column, also where the first page is wider', async () => {
    const { paper, put } = remembering(await newPaper({ title: '' }));
    const flow = new Flow(paper, lying(PAPERS.a4), PAPERS.a4);
    const long = 'a name that is far longer than the column is wide and goes on and on '.repeat(3);
    flowTable(
      flow,
      columns,
      Array.from({ length: 120 }, (_, i) => row(i + 1, i % 3 ? 'Feather' : long)),
    );
    expect(new Set(put.map(({ page }) => page)).size).toBeGreaterThan(2);
    const sizes = paper.pages.map(({ size }) => size);
    const outside = put.filter(
      ({ page, left, right, y }) =>
        left < MARGIN || right > sizes[page - 1].width - MARGIN || y > sizes[page - 1].height - MARGIN,
    );
    expect(outside).toEqual([]);
    const intoSeams = put.filter(
      ({ page, left, right }) => left < MARGIN + 13.2 && right > sizes[page - 1].width - MARGIN - 30,
    );
    expect(intoSeams).toEqual([]);
  });

  test('keeps remarks with the row that they stand before', async () => {
    const { paper, put } = remembering(await newPaper({ title: '' }));
    const rows = Array.from({ length: 80 }, (_, i): SheetRow[] => [
      { remark: `Halt ${i + 1}` },
      { remark: `Then ${i + 1}` },
      row(i + 1, `What ${i + 1}`),
    ]);
    flowTable(new Flow(paper, PAPERS.a4), columns, rows.flat());
    const pageOf = (text: string) => put.find((one) => one.text === text)!.page;
    expect(paper.pages.length).toBeGreaterThan(2);
    for (const remark of ['Halt', 'Then'])
      expect(rows.filter((_, i) => pageOf(`${remark} ${i + 1}`) !== pageOf(`What ${i + 1}`))).toEqual([]);
  });

  test('cuts a name without end, and says so', async () => {
    const { paper, put } = remembering(await newPaper({ title: '' }));
    flowTable(new Flow(paper, PAPERS.a4), columns, [row(1, 'x'.repeat(100_000))]);
    expect(paper.pages).toHaveLength(1);
    expect(put.filter(({ text }) => text.endsWith('…'))).toHaveLength(1);
  });

  test.skipIf(!hasPoppler)(
    'repeats its headings on every page, and has every row once, in order',
    async () => {
      const paper = await newPaper({ title: '' });
      flowTable(
        new Flow(paper, PAPERS.letter),
        columns,
        Array.from({ length: 120 }, (_, i) => row(i + 1, 'Feather')),
      );
      const pages = pageTexts(await paper.bytes());
      expect(pages.filter((text) => (text.match(/Stop\s+What\s+Seams/g) ?? []).length !== 1)).toEqual([]);
      const stops = pages.flatMap((text) =>
        [...text.matchAll(/^\s*(\d+)\s+Feather\s+seam \1\s*$/gm)].map(([, n]) => Number(n)),
      );
      expect(stops).toEqual(Array.from({ length: 120 }, (_, i) => i + 1));
    },
  );
});
