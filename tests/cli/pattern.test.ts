import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Finding } from '../../src/finding.js';
import { contents, newFolder, removeFolder, seamwright } from './run-cli.js';

const block = `<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="60mm" viewBox="0 0 90 60">
  <path fill="#6d7743" d="M0 0H90V30H0Z"/><path fill="#a5563f" d="M0 30H40V60H0Z"/><path fill="#35435f" d="M40 30H90V60H40Z"/>
</svg>`;
/** The lower seam is too short for stitches of the size asked for; a name is written on it, which is no line. */
const short = block.replaceAll('30', '52').replace('</svg>', '<text>hearth</text></svg>');
const folder = newFolder();
const patient = 120_000;
beforeAll(async () => {
  writeFileSync(join(folder, 'block.svg'), block);
  await seamwright(folder, 'dress', 'block.svg', '--stitch', 'feather', '--save', 'block.dressing.json');
  writeFileSync(join(folder, 'short.svg'), short);
  await seamwright(folder, 'dress', 'short.svg', '--stitch', 'feather', '--save', 'short.dressing.json');
}, patient);
afterAll(() => removeFolder(folder));

describe('pattern', () => {
  it(
    'writes pages and a sheet of a saved dressing, and of a block dressed by the same options alike',
    async () => {
      const saved = await seamwright(folder, 'pattern', 'block.dressing.json', '--out', 'a.pdf', 'a.svg');
      expect([saved.status, saved.stderr]).toEqual([0, '']);
      expect(saved.stdout).toMatch(/^Pattern of 9\d\.\d x 6\d\.\d mm, with \d+ needle points, on 2 pages A4/);
      expect(saved.stdout).toContain('Made a.pdf, a.svg');
      expect(readFileSync(join(folder, 'a.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
      await seamwright(folder, 'pattern', 'block.svg', '--stitch', 'feather', '--out', 'b.svg');
      expect(readFileSync(join(folder, 'b.svg'), 'utf8')).toBe(readFileSync(join(folder, 'a.svg'), 'utf8'));
    },
    patient,
  );

  it(
    'mirrors it, keeps to the seams asked for, and tells a program what it holds',
    async () => {
      const { status, stdout } = await seamwright(
        ...[folder, 'pattern', 'block.dressing.json', '--mirror', '--seam', '2'],
        ...['--paper', 'letter', '--out', 'c.pdf', '--json'],
      );
      const { pattern, outputs } = JSON.parse(stdout);
      expect(status).toBe(0);
      expect(pattern).toMatchObject({ mirrored: true, pages: 2 });
      expect(pattern.work.map(({ place }: { place: string }) => place)).toEqual(['2']);
      expect(outputs).toEqual(['c.pdf']);
    },
    patient,
  );

  it(
    'tells what concerns its own seams and the whole, nothing of seams that are not in it',
    async () => {
      const told = async (...seam: string[]): Promise<Finding[]> => {
        const words = ['pattern', 'short.dressing.json', ...seam, '--out', 's.svg', '--json'];
        return JSON.parse((await seamwright(folder, ...words)).stdout).findings;
      };
      const whole = await told();
      const seams = new Set(whole.map(({ seam }) => seam));
      expect(seams).toEqual(new Set([undefined, 2]));
      for (const seam of [1, 2]) {
        const own = whole.filter((finding) => finding.seam === undefined || finding.seam === seam);
        expect(await told('--seam', String(seam))).toEqual(own);
      }
    },
    patient,
  );

  it.each([
    [['block.dressing.json'], '--out: is not given; name the pattern, such as --out pattern.pdf'],
    [['block.dressing.json', '--out', 'd.png'], '--out d.png: this command makes no such file'],
    [
      ['block.dressing.json', '--out', 'd.svg', '--paper', 'a4'],
      '--paper: is about pages, and none are made',
    ],
    [['block.dressing.json', '--out', 'd.pdf', '--paper', 'a3'], "--paper: 'a3'"],
    [['block.dressing.json', '--out', 'd.pdf', '--seam', '44'], '--seam 44: has no treatment; choose among'],
    [
      ['block.dressing.json', '--out', 'd.pdf', '--stitch', 'fly'],
      '--stitch: block.dressing.json is a saved dressing',
    ],
    [['nothing.svg', '--out', 'd.pdf'], 'nothing.svg: does not exist'],
  ])(
    'refuses %j in a line, and writes nothing',
    async (words, told) => {
      const before = contents(folder);
      const { status, stdout, stderr } = await seamwright(folder, 'pattern', ...words);
      expect([status, stdout]).toEqual([2, '']);
      expect(stderr).toContain(`seamwright: ${told}`);
      expect(stderr.trimEnd().split('\n')).toHaveLength(1);
      expect(contents(folder)).toEqual(before);
    },
    patient,
  );
});
