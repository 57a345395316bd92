import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Treatment } from '../../src/formats/dressing.js';
import { piecedPanel, SEAM_STOPS } from '../fixtures/pieced-panel.js';
import { newFolder, removeFolder, seamwright } from './run-cli.js';

const drawn = (
  y: number,
) => `<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="60mm" viewBox="0 0 90 60">
  <path fill="#6d7743" d="M0 0H90V${y}H0Z"/><path fill="#a5563f" d="M0 ${y}H40V60H0Z"/><path fill="#35435f" d="M40 ${y}H90V60H40Z"/>
</svg>`;
const folder = newFolder();
const read = (name: string) => readFileSync(join(folder, name), 'utf8');
beforeAll(() => {
  writeFileSync(join(folder, 'block.svg'), drawn(30));
  mkdirSync(join(folder, 'elsewhere'));
});
afterAll(() => removeFolder(folder));
const patient = 120_000;

describe('a dressing saved with every option', () => {
  it(
    'does the same again, and is saved the same again',
    async () => {
      const how = [
        ...['--stitch', 'feather', '--width', '6', '--repeat', '7', '--ends', 'bevel', '--edge', 'blanket'],
        ...['--outline', 'free', '--snap', '0.4', '--gap', '0.8', '--seed', '5', '--by-hand', '0.3'],
        ...['--thread', 'darkred', '--scale', '1.2', '--turn', '90', '--hoop', '200x200', '--order', '2,1'],
        ...['--pull', '0.2', '--heavy', 'pearl-8'],
        ...['--set', '1:side=left', '2:passes=2'],
        ...['--guide', 'wave', '--guide-height', '4', '--guide-length', '20'],
      ];
      const first = await seamwright(
        folder,
        'dress',
        'block.svg',
        ...how,
        '--save',
        'a.dressing.json',
        '--out',
        'a.dst',
      );
      expect(first.stderr).toBe('');
      const dressing = JSON.parse(read('a.dressing.json'));
      expect(dressing).toMatchObject({
        order: [2, 1],
        byHand: 0.3,
        pull: 0.2,
        hoop: { width: 200 },
        gap: 0.8,
        seed: 5,
      });
      expect(dressing.treatments.map(({ rows: [row] }: Treatment) => row.heavy ?? row.passes)).toEqual([
        'pearl-8',
        2,
        'pearl-8',
      ]);
      expect(dressing.block).toMatchObject({ file: 'block.svg', scale: 1.2, turn: 90, snap: 0.4 });
      const again = await seamwright(
        folder,
        'dress',
        'a.dressing.json',
        '--out',
        'b.dst',
        '--save',
        'b.dressing.json',
      );
      expect(again.stdout).not.toContain('has changed');
      expect(read('b.dst')).toBe(read('a.dst'));
      expect(read('b.dressing.json')).toBe(read('a.dressing.json'));
    },
    patient,
  );

  it(
    'and mixed on a pieced block that is made to fit its hoop does so too',
    async () => {
      writeFileSync(join(folder, 'pieced.dst'), piecedPanel());
      const how = [
        ...['--stops', SEAM_STOPS.join(), '--mix', '--seed', '3', '--threads', '2', '--pin', '3=feather'],
        ...['--fit-hoop', '100x130', '--turn', '90', '--leave-out', '26', '--keep-clear-stops', '24'],
        ...['--ornament', 'fan', '--bare', '2'],
      ];
      const outputs = (name: string) => ['--out', `${name}.dst`, '--save', `${name}.dressing.json`];
      const first = await seamwright(folder, 'dress', 'pieced.dst', ...how, ...outputs('h'));
      expect([first.stderr, first.status]).toEqual(['', 0]);
      const dressing = JSON.parse(read('h.dressing.json'));
      expect(dressing).toMatchObject({ hoop: { width: 100, height: 130 }, seed: 3, threads: [{}, {}] });
      expect(dressing.block).toMatchObject({ scale: 'hoop', turn: 90, leaveOut: [26], stops: SEAM_STOPS });
      expect(dressing.keepClear).toEqual([{ name: 'stop 24', stops: [24] }]);
      expect(dressing.ornaments[0]).toMatchObject({ ornament: 'fan', pinned: true });
      await seamwright(folder, 'dress', 'h.dressing.json', ...outputs('i'));
      expect(read('i.dst')).toBe(read('h.dst'));
      expect(read('i.dressing.json')).toBe(read('h.dressing.json'));
    },
    patient,
  );

  it(
    'notices that its block has changed, and finds the seams again',
    async () => {
      await seamwright(folder, 'dress', 'block.svg', '--bare', '2', '--save', 'c.dressing.json');
      const saved = JSON.parse(read('c.dressing.json'));
      writeFileSync(join(folder, 'moved.svg'), drawn(31));
      const moved = { ...saved, block: { ...saved.block, file: 'moved.svg' } };
      writeFileSync(join(folder, 'd.dressing.json'), JSON.stringify(moved));
      const { stdout } = await seamwright(
        folder,
        'dress',
        'd.dressing.json',
        '--json',
        '--save',
        'e.dressing.json',
      );
      const { findings, fits } = JSON.parse(stdout);
      expect(findings.map((one: { code: string }) => one.code)).toContain('block-changed');
      expect(fits.map((fit: { seam: number }) => fit.seam)).toEqual([1]);
      const after = await seamwright(folder, 'dress', 'e.dressing.json', '--json');
      expect(after.stdout, 'once saved, it is known').not.toContain('block-changed');
    },
    patient,
  );

  it(
    'holds the drawing itself on request, and then needs no other file',
    async () => {
      await seamwright(
        folder,
        'dress',
        'block.svg',
        '--save',
        'elsewhere/f.dressing.json',
        '--embed',
        '--out',
        'f.dst',
      );
      const { block } = JSON.parse(read('elsewhere/f.dressing.json'));
      expect([block.svg, block.file, block.digest]).toEqual([drawn(30), 'block.svg', undefined]);
      const { stderr } = await seamwright(
        join(folder, 'elsewhere'),
        'dress',
        'f.dressing.json',
        '--out',
        'g.dst',
      );
      expect(stderr).toBe('');
      expect(read('elsewhere/g.dst')).toBe(read('f.dst'));
    },
    patient,
  );

  it(
    'takes the drawing up when it was saved without it',
    async () => {
      await seamwright(folder, 'dress', 'block.svg', '--save', 'without.dressing.json');
      await seamwright(folder, 'dress', 'without.dressing.json', '--embed', '--save', 'with.dressing.json');
      const { block } = JSON.parse(read('with.dressing.json'));
      expect([block.svg, block.file, block.digest]).toEqual([drawn(30), 'block.svg', undefined]);
    },
    patient,
  );
});

describe.concurrent('options that cannot stand together are refused in one line', () => {
  it.each([
    [
      ['--save', 'a.json'],
      '--save a.json: this command makes no such file; choose a name that ends in .dressing.json',
    ],
    [
      ['--save', 'no/a.dressing.json'],
      '--save no/a.dressing.json: there is no folder no; make it first or choose another',
    ],
    [['--embed'], '--embed: no dressing is saved; name one with --save'],
    [
      ['--scale', '2', '--fit-hoop', '100x100'],
      '--scale: stands beside --fit-hoop, which says this itself; leave one of them away',
    ],
    [
      ['--fit-hoop', '100'],
      "--fit-hoop: '100' is no sewing field; give millimeters across and down, such as 130x180",
    ],
    [['--scale', '70%'], "--scale: '70%' is not a plain number; give a number from 0.05 to 20, such as 0.7"],
    [
      ['--leave-out', '2'],
      '--leave-out: block.svg is a drawing and has no color stops; leave --leave-out away',
    ],
    [
      ['--set', '4=left'],
      "--set: '4=left' sets nothing; give seams, what to set and how, such as 4:side=left",
    ],
    [['--through', '4'], "--through: '4' names no two seams; give a seam and one that it meets, such as 4@3"],
    [
      ['--mix', '--bare', '2', '--set', '2:stitch=fly'],
      '--bare 2: seam 2 is to have fly too; say one or the other',
    ],
    [
      ['--keep-clear-stops', '3'],
      '--keep-clear-stops: block is a drawing and has no color stops; mark what is to be kept clear in the drawing, with data-seamwright="keep-clear"',
    ],
    [
      ['--guide', 'wave', '--guide-length', '8', '--guide-height', '5'],
      '--guide-height 5: no thread could follow so steep a line; with --guide-length 8 it takes up to 4 mm',
    ],
    [['--bare', '7'], '--bare 7: the block has no such seam; its seams are 1 to 2'],
  ])(
    '%s',
    async (words, says) => {
      const { status, stderr } = await seamwright(folder, 'dress', 'block.svg', ...words);
      expect([stderr.trim(), status]).toEqual([`seamwright: ${says}`, 2]);
    },
    patient,
  );
});
