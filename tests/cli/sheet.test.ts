import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contents, newFolder, removeFolder, seamwright } from './run-cli.js';

const drawn = (width: number, height: number) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 90 60">
  <path fill="#6d7743" d="M0 0H90V30H0Z"/><path fill="#a5563f" d="M0 30H90V60H0Z"/>
</svg>`;
const folder = newFolder();
const bytes = (name: string) => readFileSync(join(folder, name));
beforeAll(() => {
  writeFileSync(join(folder, 'block.svg'), drawn(90, 60));
  writeFileSync(join(folder, 'banner.svg'), drawn(900, 600));
});
afterAll(() => removeFolder(folder));
const patient = 120_000;

describe('the sew sheet from the command line', () => {
  it(
    'is the same from a block with options, from dress, and from the dressing that was saved',
    async () => {
      const how = ['block.svg', '--stitch', 'feather', '--width', '6'];
      const sheet = await seamwright(folder, 'sheet', ...how, '--out', 'a.pdf', '--json');
      expect(sheet.stderr).toBe('');
      expect(sheet.status).toBe(0);
      const told = JSON.parse(sheet.stdout);
      expect(told.sheet).toMatchObject({ paper: 'a4', scale: 1, halts: [] });
      expect(told.sheet.stops[0]).toMatchObject({ stop: 1, firstStitch: 1, beginsOn: 1, optional: true });
      expect(told.outputs).toEqual(['a.pdf']);
      expect(bytes('a.pdf').subarray(0, 5).toString()).toBe('%PDF-');

      const dressed = await seamwright(
        folder,
        'dress',
        ...how,
        '--out',
        'b.pdf',
        '--save',
        'b.dressing.json',
      );
      expect(dressed.status).toBe(0);
      expect(bytes('b.pdf').equals(bytes('a.pdf'))).toBe(true);

      const saved = await seamwright(folder, 'sheet', 'b.dressing.json', '--out', 'c.pdf');
      expect(saved.stdout).toMatch(
        /^Sew sheet of \d pages? A4, the picture at actual size\.\n[\s\S]*Made c\.pdf/,
      );
      expect(bytes('c.pdf').equals(bytes('a.pdf'))).toBe(true);

      const sampler = await seamwright(
        folder,
        'sampler',
        'b.dressing.json',
        '--out',
        'd.pdf',
        '--paper',
        'letter',
      );
      expect(sampler.status).toBe(0);
      expect(bytes('d.pdf').subarray(0, 5).toString()).toBe('%PDF-');
    },
    patient,
  );

  it.each([
    [['sheet', 'block.svg'], /--out: is not given; name the sheet/],
    [['sheet', 'block.svg', '--out', 'x.svg'], /--out x\.svg: this command makes no such file.*\.pdf/],
    [
      ['sheet', 'block.svg', '--out', 'x.pdf', '--paper', 'a5'],
      /--paper: 'a5' is no choice; choose a4, letter/,
    ],
    [['dress', 'block.svg', '--paper', 'letter'], /--paper: is about the sheet, and none is made/],
    [
      ['sheet', 'banner.svg', '--out', 'x.pdf'],
      /is 9\d\d\.\d x 6\d\d\.\d mm, for which A4.*--picture smaller/,
    ],
    [
      ['dress', 'banner.svg', '--out', 'x.dst', 'x.pdf'],
      /is 9\d\d\.\d x 6\d\d\.\d mm, for which A4.*--picture smaller/,
    ],
  ] as const)(
    '%j is refused in one line, and nothing is written',
    async (words, says) => {
      const before = contents(folder);
      const { status, stdout, stderr } = await seamwright(folder, ...words);
      expect(stderr).toMatch(says);
      expect(stderr.trimEnd().split('\n')).toHaveLength(1);
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      expect(contents(folder)).toEqual(before);
    },
    patient,
  );
});
