import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spelled } from '../../src/sheet/letters.js';
import { PAPERS } from '../../src/sheet/page-sizes.js';
import { newPaper } from '../../src/sheet/paper.js';
import { hasPoppler, pageTexts } from './poppler.js';

/** Printable letters of ASCII and Latin-1: what every face has. */
const latin = new Set([
  ...Array.from({ length: 95 }, (_, i) => 32 + i),
  ...Array.from({ length: 96 }, (_, i) => 160 + i),
]);

describe('names in letters that a face has not', () => {
  test.each([
    ['Old gold', 'Old gold'],
    ['Rosé à l’ombre'.replace('’', "'"), "Rosé à l'ombre"],
    ['Żółty łańcuszek', 'Zólty lancuszek'],
    ['Őszi barack, tűzpiros', 'Oszi barack, tuzpiros'],
    ['Řeřicha světlá', 'Rericha svetlá'],
    ['Kırmızı', 'Kirmizi'],
    ['Жёлтый щит', 'Zheltyi shchit'],
    ['Вишня № 5', 'Vishnia No. 5'],
    ['Κόκκινο', 'Kokkino'],
    ['Đỏ thẫm', 'Do tham'],
    ['Ｇｏｌｄ', 'Gold'],
    ['紅', '[U+7D05]'],
    ['🧵 red', '[U+1F9F5] red'],
  ])('%s is told as %s', (name, told) => {
    expect(spelled(name, latin)).toBe(told);
  });

  test('letters written with separate marks are the same letters', () => {
    expect(spelled('Cafe\u0301', latin)).toBe('Café');
  });

  test('whatever the text, only letters of the face are left, and every letter that is seen stands for something', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect([...spelled(text, latin)].filter((one) => !latin.has(one.codePointAt(0)!))).toEqual([]);
      }),
    );
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1, maxLength: 1 }), (letter) => {
        fc.pre(/[\p{L}\p{N}\p{P}\p{S}]/u.test(letter));
        expect(spelled(letter, latin)).not.toBe('');
      }),
    );
  });

  test.skipIf(!hasPoppler)(
    'names of the west of Europe are printed as they are, others as spelled',
    async () => {
      const paper = await newPaper({ title: 'Żółty' });
      const page = paper.addPage(PAPERS.a4);
      page.text('Grün, crème, señal, Œuvre, Š, “quoted” – 5 €', 20, 20, { size: 4 });
      page.text('Żółty; Жук; 紅', 20, 30, { size: 4, bold: true });
      const [text] = pageTexts(await paper.bytes());
      expect(text).toContain('Grün, crème, señal, Œuvre, Š, “quoted” – 5 €');
      expect(text).toContain('Zólty; Zhuk; [U+7D05]');
    },
  );
});
