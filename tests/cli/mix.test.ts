import { copyFileSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { seamwright } from './run-cli.js';

const panel = fileURLToPath(new URL('../../gallery/demo/panel.svg', import.meta.url));

function workshop(): string {
  const folder = mkdtempSync(join(tmpdir(), 'seamwright-mix-'));
  copyFileSync(panel, join(folder, 'panel.svg'));
  return folder;
}

describe('dress --mix', () => {
  test('says why each seam has what it has, and the same seed gives the same bytes', async () => {
    const folder = workshop();
    const run = (out: string) =>
      seamwright(
        folder,
        'dress',
        'panel.svg',
        '--mix',
        '--seed',
        '4',
        '--json',
        '--out',
        `${out}.dressing.json`,
        `${out}.dst`,
      );
    const [first, second] = [await run('a'), await run('b')];
    expect([first.status, second.status]).toEqual([0, 0]);
    const { fits } = JSON.parse(first.stdout) as { fits: { seam: number; why: string }[] };
    expect(fits.map(({ seam }) => seam)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(fits.filter(({ why }) => !why)).toEqual([]);
    for (const ending of ['dressing.json', 'dst']) {
      const [a, b] = ['a', 'b'].map((name) => readFileSync(join(folder, `${name}.${ending}`)));
      // the name in a stitch file is the block's, so that nothing differs
      expect(a.equals(b)).toBe(true);
    }
  }, 60_000);

  test('keeps what is pinned when a saved dressing is mixed again', async () => {
    const folder = workshop();
    await seamwright(folder, 'dress', 'panel.svg', '--mix', '--pin', '3=feather', '--out', 'a.dressing.json');
    const again = await seamwright(
      folder,
      'dress',
      'a.dressing.json',
      '--mix',
      '--seed',
      '9',
      '--out',
      'b.dressing.json',
    );
    expect(again.stdout).toContain('seam 3   pinned in the dressing');
    const [a, b] = ['a', 'b'].map((name) =>
      JSON.parse(readFileSync(join(folder, `${name}.dressing.json`), 'utf8')),
    );
    expect(a.treatments[2].rows[0].stitch).toBe('feather');
    expect(b.treatments[2]).toEqual(a.treatments[2]);
    expect(b.treatments[0]).not.toEqual(a.treatments[0]);
    expect(b.seed).toBe(9);
  }, 60_000);

  test('pins a stitch that is set, so that nothing that meets it has the same, the edge too', async () => {
    const { stdout } = await seamwright(
      workshop(),
      'dress',
      'panel.svg',
      '--mix',
      '--edge',
      'blanket',
      '--set',
      '5:stitch=herringbone',
      '5:side=left',
      'edge:stitch=chevron',
      '--json',
    );
    const { fits, findings } = JSON.parse(stdout) as {
      fits: { seam: number | 'outline'; stitch: string; why: string }[];
      findings: { code: string }[];
    };
    const of = (stitch: string) => fits.filter((one) => one.stitch === stitch).map(({ seam }) => seam);
    const fifth = fits.find(({ seam }) => seam === 5)!;
    expect(fifth.stitch).toBe('herringbone');
    expect(fifth.why).toMatch(/^Herringbone: pinned; .*; then side set to left$/);
    // seam 5 meets 2, 6 and 9; all but 3, 5, 6 and 7 end on the outline
    expect(of('herringbone').filter((seam) => [2, 6, 9].includes(seam as number))).toEqual([]);
    expect(of('chevron').filter((seam) => ![3, 5, 6, 7].includes(seam as number))).toEqual(['outline']);
    expect(findings.filter(({ code }) => code === 'stitches-meet')).toEqual([]);
  }, 60_000);

  test.each([
    [['--set', '4:thread=nocolor'], "--set 4:thread=nocolor: 'nocolor' is no color"],
    [['--pin', '3=feather'], '--pin: stands without --mix'],
    [['--threads', '3'], '--threads: stands without --mix'],
    [['--mix', '--stitch', 'fly'], '--stitch: stands beside --mix'],
    [['--mix', '--width', '8'], '--width: stands beside --mix'],
    [['--mix', '--threads', '13'], '--threads: 13 is out of range'],
    [
      ['--mix', '--pin', 'feather'],
      "--pin: 'feather' is no pin; give a seam and what it has, such as 3=feather",
    ],
    [
      ['--mix', '--pin', '3=fether'],
      '--pin 3=fether: there is no stitch or treatment "fether"; did you mean "feather"?',
    ],
    [['--mix', '--pin', '33=fly'], '--pin 33=fly: the block has no such seam; its seams are 1 to 11'],
    [['--mix', '--pin', '3=fly', '3=feather'], '--pin 3=feather: seam 3 is pinned twice'],
    [['--mix', '--seam', '12'], '--seam 12: the block has no such seam'],
  ])(
    '%j is refused in a line',
    async (words, complaint) => {
      const { status, stderr, stdout } = await seamwright(workshop(), 'dress', 'panel.svg', ...words);
      expect(stderr).toContain(complaint);
      expect(stderr.trim().split('\n')).toHaveLength(1);
      expect([status, stdout]).toEqual([2, '']);
    },
    60_000,
  );
});
