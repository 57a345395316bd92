import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contents, newFolder, removeFolder, seamwright } from './run-cli.js';

const folder = newFolder();
const demo = (name: string) => fileURLToPath(new URL(`../../gallery/demo/${name}`, import.meta.url));
const patient = 120_000;
beforeAll(async () => {
  for (const name of ['panel.svg', 'stash.csv']) copyFileSync(demo(name), join(folder, name));
  writeFileSync(join(folder, 'bad.csv'), 'name,color\nBrick,nocolor\nBrick,\n');
  writeFileSync(join(folder, 'no-color.csv'), 'name,shade\nBrick,red\n');
  writeFileSync(join(folder, 'twice.csv'), 'name,color\nBrick,red\nbrick,darkred\n');
  writeFileSync(join(folder, 'cloth.png'), 'this is text');
  writeFileSync(join(folder, 'huge.png'), hugePicture());
  await seamwright(folder, 'dress', 'panel.svg', '--stitch', 'feather', '--save', 'panel.dressing.json');
}, patient);
afterAll(() => removeFolder(folder));

/** The head of a PNG of 10,000 by 10,000 pixels (Portable Network Graphics 1.2, 11.2.2): more than that nobody reads of it. */
function hugePicture(): Uint8Array {
  const bytes = new Uint8Array(64);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
  const view = new DataView(bytes.buffer);
  view.setUint32(16, 10_000);
  view.setUint32(20, 10_000);
  bytes.set([8, 2], 24);
  return bytes;
}

describe('threads', () => {
  it(
    'prints what each seam gets and why, and keeps it; a second run changes nothing',
    async () => {
      const first = await seamwright(
        ...[folder, 'threads', 'panel.dressing.json', '--stash', 'stash.csv', '--palette', '2', '--save'],
        'chosen.dressing.json',
      );
      expect([first.status, first.stderr]).toEqual([0, '']);
      expect(first.stdout).toContain('2 threads of the stash');
      const { threads, treatments } = JSON.parse(readFileSync(join(folder, 'chosen.dressing.json'), 'utf8'));
      expect(threads).toHaveLength(2);
      expect(threads[0].code).toMatch(/^[A-Z]\d$/);
      expect(treatments).toHaveLength(11);
      await seamwright(
        ...[folder, 'threads', 'chosen.dressing.json', '--stash', 'stash.csv', '--palette', '2', '--save'],
        'again.dressing.json',
      );
      const [a, b] = ['chosen', 'again'].map((name) =>
        readFileSync(join(folder, `${name}.dressing.json`), 'utf8'),
      );
      expect(b).toBe(a);
    },
    patient,
  );

  it(
    'tells when the block has changed since, and a seam is missing',
    async () => {
      const saved = JSON.parse(readFileSync(join(folder, 'panel.dressing.json'), 'utf8'));
      const gone = {
        ...saved.treatments[0],
        seam: {
          id: 99,
          middle: [1, 1],
          ends: [
            [0, 1],
            [2, 1],
          ],
        },
      };
      const treatments = [gone, ...saved.treatments.slice(1)];
      const block = { ...saved.block, digest: `sha256:${'0'.repeat(64)}` };
      writeFileSync(join(folder, 'other.dressing.json'), JSON.stringify({ ...saved, block, treatments }));
      const { status, stdout } = await seamwright(
        ...[folder, 'threads', 'other.dressing.json', '--stash', 'stash.csv', '--json'],
      );
      const { findings } = JSON.parse(stdout);
      expect(findings.map(({ code }: { code: string }) => code)).toContain('block-changed');
      expect(findings.some(({ level }: { level: string }) => level === 'error')).toBe(true);
      expect(status).toBe(1);
    },
    patient,
  );

  it.each([
    [
      'a stash with mistakes',
      ['--stash', 'bad.csv'],
      /bad\.csv line 2: 'nocolor' is no color.*\n.*bad\.csv line 3: the thread has no color/,
    ],
    [
      'a stash without colors',
      ['--stash', 'no-color.csv'],
      /no-color\.csv line 1: there is no column "color"/,
    ],
    [
      'a stash with a thread twice',
      ['--stash', 'twice.csv'],
      /twice\.csv line 3: "brick" in No\. 40 stands in line 2 already/,
    ],
    [
      'a picture of 100 megapixels',
      ['--stash', 'stash.csv', '--fabric', '2=huge.png'],
      /huge\.png: is a picture of 100 megapixels; make it smaller/,
    ],
    ['no stash', [], /--stash: is not given/],
    ['a stash that is the dressing', ['--stash', 'panel.dressing.json'], /there is no column "name"/],
    ['a palette of none', ['--stash', 'stash.csv', '--palette', '0'], /--palette: 0 is out of range/],
  ])(
    'refuses %s in clear lines and writes nothing',
    async (_, options, line) => {
      const before = contents(folder);
      const { status, stdout, stderr } = await seamwright(
        ...[folder, 'threads', 'panel.dressing.json', '--save', 'new.dressing.json'],
        ...options,
      );
      expect([status, stdout]).toEqual([2, '']);
      expect(stderr).toMatch(line);
      expect(contents(folder)).toEqual(before);
    },
    patient,
  );

  it(
    'refuses fabrics that are none: no patch, no color, no picture, each in its line',
    async () => {
      const { status, stderr } = await seamwright(
        ...[
          folder,
          'dress',
          'panel.svg',
          '--fabric',
          '99=red',
          '1=nored',
          '2=cloth.png',
          '3=red,wide:50',
          '--out',
        ],
        'panel.dst',
      );
      expect(status).toBe(2);
      expect(stderr.trim().split('\n')).toEqual([
        'seamwright: --fabric 99=red: the block has no patch 99; its patches are 1 to 12',
        "seamwright: --fabric 1=nored: 'nored' is no color; give one such as #7a2f3b or darkred",
        'seamwright: cloth.png: is no picture; give a PNG or JPEG picture of the fabric',
        'seamwright: --fabric 3=red,wide:50: says how wide a picture is, and names none; give a color, such as #7a2f3b, or a picture file',
      ]);
    },
    patient,
  );
});
