import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contents, newFolder, removeFolder, seamwright } from './run-cli.js';

const block = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">
  <path fill="#6d7743" d="M0 0H60V20H0Z"/><path fill="#a5563f" d="M0 20H30V40H0Z"/><path fill="#35435f" d="M30 20H60V40H30Z"/>
</svg>`;

const folder = newFolder();
const read = (name: string) => readFileSync(join(folder, name));
beforeAll(async () => {
  writeFileSync(join(folder, 'block.svg'), block);
  const { status, stderr } = await seamwright(
    folder,
    'dress',
    'block.svg',
    '--out',
    'sewn.dst',
    'work.dressing.json',
  );
  expect([stderr, status]).toEqual(['', 0]);
}, 60_000);
afterAll(() => removeFolder(folder));

const patient = 60_000;

describe.concurrent('pictures of a piece of work', () => {
  it(
    'are made of a dressing and of a stitch file, as SVG and PNG at true size',
    async () => {
      for (const from of ['work.dressing.json', 'sewn.dst']) {
        const { status, stdout, stderr } = await seamwright(folder, 'check', from, '--out', 'd.svg', 'd.png');
        expect([stderr, status]).toEqual(['', 0]);
        expect(stdout).toContain('Made d.svg, d.png');
        const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(read('d.svg').toString())!;
        expect(read('d.svg').toString()).toContain('<title>density, holes</title>');
        const png = read('d.png');
        const dots = [png.readUInt32BE(16), png.readUInt32BE(20)];
        // Portable Network Graphics, chunk pHYs: dots to the meter
        const at = png.indexOf('pHYs');
        const toTheMeter = png.readUInt32BE(at + 4);
        expect(png[at + 12]).toBe(1);
        expect(Math.abs((1000 * dots[0]) / toTheMeter - Number(width))).toBeLessThan(0.1);
        expect(Math.abs((1000 * dots[1]) / toTheMeter - Number(height))).toBeLessThan(0.1);
      }
    },
    patient,
  );

  it(
    'mark density from the limits on that the maker sets, of dress as of check',
    async () => {
      const of = async (command: string, ...limits: string[]) => {
        const words = ['--show', 'density', '--out', `${command}-limits.svg`];
        const { status } = await seamwright(folder, command, 'work.dressing.json', ...words, ...limits);
        // 1 where something is too dense
        expect(status).toBeLessThan(2);
        return read(`${command}-limits.svg`).toString();
      };
      const limits = ['--limits', 'holes=0.6,0.9'];
      const [dressed, checked] = await Promise.all([of('dress', ...limits), of('check', ...limits)]);
      // the usual ones are 5 and 9
      expect(dressed).toContain('holes above 0.9<');
      expect(checked).toBe(dressed);
    },
    patient,
  );

  it(
    'mark density from the limits on that the dressing keeps, which an option goes before',
    async () => {
      const keep = ['--limits', 'holes=0.6,0.8', '--cloth', 'fine', '--save', 'kept.dressing.json'];
      const { status } = await seamwright(folder, 'dress', 'work.dressing.json', ...keep);
      expect(status).toBe(0);
      expect(JSON.parse(read('kept.dressing.json').toString()).density).toEqual({
        cloth: 'fine',
        holes: [0.6, 0.8],
      });
      const of = async (out: string, ...more: string[]) => {
        const words = ['--show', 'density', '--out', out, ...more];
        await seamwright(folder, 'check', 'kept.dressing.json', ...words);
        return read(out).toString();
      };
      expect(await of('kept.svg')).toContain('holes above 0.8<');
      expect(await of('said.svg', '--limits', 'holes=0.7')).toContain('holes above 0.8<');
      expect(await of('told.svg', '--limits', 'holes=0.7,0.9')).toContain('holes above 0.9<');
    },
    patient,
  );

  it(
    'that show no density are given no limits in vain',
    async () => {
      for (const words of [
        ['--limits', 'holes=2'],
        ['--cloth', 'fine', '--show', 'stops', '--out', 'x.svg'],
      ]) {
        const { status, stderr } = await seamwright(folder, 'dress', 'work.dressing.json', ...words);
        expect(status).toBe(2);
        expect(stderr).toContain(`${words[0]}: says from where on density is told`);
        expect(contents(folder)).not.toContain('x.svg');
      }
    },
    patient,
  );

  it(
    'show what is asked for, after the stops that are asked for',
    async () => {
      const words = ['--show', 'stops,numbers', '--stop', '1', '--out', 's.svg'];
      const { status, stderr } = await seamwright(folder, 'dress', 'work.dressing.json', ...words);
      expect([stderr, status]).toEqual(['', 0]);
      const svg = read('s.svg').toString();
      expect(svg).toContain('<title>stop 1: ');
      expect(svg).not.toContain('<title>stop 2: ');
    },
    patient,
  );
});

describe.concurrent('pictures that cannot be made get one clear line, status 2, and nothing is written', () => {
  it.each([
    {
      when: 'what they show has no such name',
      words: ['check', 'sewn.dst', '--show', 'heat', '--out', 'x.png'],
      says: /--show: 'heat' is nothing that a picture shows; choose among thread, density/,
    },
    {
      when: 'none is asked for',
      words: ['dress', 'block.svg', '--show', 'stops', '--out', 'x.dst'],
      says: /--show: says what a picture shows, and none is made; name one with --out/,
    },
    {
      when: 'a color stop does not exist',
      words: ['check', 'sewn.dst', '--stop', '1-9', '--out', 'x.png'],
      says: /--stop: there is no color stop 3; give numbers from 1 to 2/,
    },
    {
      when: 'a stitch file is to show bare seam',
      words: ['check', 'sewn.dst', '--show', 'bare', '--out', 'x.png'],
      says: /--show bare: a stitch file tells no seams/,
    },
    {
      when: 'a stitch file is to show contrast',
      words: ['check', 'sewn.dst', '--show', 'contrast', '--out', 'x.png'],
      says: /--show contrast: a stitch file tells no colors of thread and fabric/,
    },
    {
      when: 'the picture would replace what it shows',
      words: ['check', 'sewn.dst', '--out', 'sewn.dst'],
      says: /--out sewn\.dst: this command makes no such file; choose a name that ends in \.svg or \.png/,
    },
  ])(
    'when $when',
    async ({ words, says }) => {
      const before = contents(folder);
      const { status, stdout, stderr } = await seamwright(folder, ...words);
      expect(stderr).toMatch(says);
      expect(stderr).toMatch(/^seamwright: [^\n]+; [^\n]+\n$/);
      expect([stdout, status]).toEqual(['', 2]);
      expect(Object.keys(contents(folder)).filter((name) => name.startsWith('x.'))).toEqual([]);
      expect(contents(folder)['sewn.dst']).toBe(before['sewn.dst']);
    },
    patient,
  );
});
