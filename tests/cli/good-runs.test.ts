import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { piecedPanel, SEAM_STOPS } from '../fixtures/pieced-panel.js';
import { newFolder, removeFolder, seamwright, seamwrightUnread } from './run-cli.js';

const block = `<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="60mm" viewBox="0 0 90 60">
  <path fill="#6d7743" d="M0 0H90V30H0Z"/><path fill="#a5563f" d="M0 30H40V60H0Z"/><path fill="#35435f" d="M40 30H90V60H40Z"/>
</svg>`;

const folder = newFolder();
const read = (name: string) => readFileSync(join(folder, name));
beforeAll(() => {
  writeFileSync(join(folder, 'block.svg'), block);
  writeFileSync(join(folder, 'marked.svg'), `\uFEFF${block}`);
  writeFileSync(join(folder, 'drawing-by-another-name.txt'), block);
  writeFileSync(join(folder, 'pieced.dst'), piecedPanel());
});
afterAll(() => removeFolder(folder));

const patient = 60_000;

describe.concurrent('a run that goes right', () => {
  it(
    'writes every kind of output and says so',
    async () => {
      const outs = ['a.dst', 'a.svg', 'a.png', 'a.json', 'a.dressing.json', 'a.csv', 'a.txt'];
      const { status, stdout, stderr } = await seamwright(folder, 'dress', 'block.svg', '--out', ...outs);
      expect([stderr, status]).toEqual(['', 0]);
      expect(stdout).toContain(`Made ${outs.join(', ')}`);
      expect(read('a.dst').subarray(0, 3).toString()).toBe('LA:');
      expect(read('a.svg').toString()).toMatch(/^<svg[^>]* width="90mm" height="60mm"/);
      expect(read('a.png').subarray(0, 8)).toEqual(Buffer.from('89504e470d0a1a0a', 'hex'));
      expect(read('a.png').readUInt32BE(16)).toBe(Math.round((90 / 25.4) * 300));
      expect(JSON.parse(read('a.json').toString()).units).toBe('0.1mm');
      expect(read('a.csv').toString().split('\r\n')).toHaveLength(4);
      expect(stdout.startsWith(read('a.txt').toString().slice(0, 200))).toBe(true);
    },
    patient,
  );

  it(
    'sews a sampler of a saved dressing, and checks its stitches and those of its stitch file',
    async () => {
      await seamwright(folder, 'dress', 'block.svg', '--out', 's.dst', '--save', 's.dressing.json');
      const sampler = await seamwright(
        folder,
        'sampler',
        's.dressing.json',
        '--out',
        't.dst',
        't.svg',
        '--json',
      );
      expect([sampler.stderr, sampler.status]).toEqual(['', 0]);
      expect(JSON.parse(sampler.stdout).samples).toEqual([
        { number: 1, line: 1, seams: [1] },
        { number: 2, line: 2, seams: [2] },
      ]);
      const dressing = await seamwright(folder, 'check', 's.dressing.json', '--json');
      const file = await seamwright(folder, 'check', 's.dst', '--json');
      const [one, other] = [JSON.parse(dressing.stdout), JSON.parse(file.stdout)];
      expect(one.stitchMm).toEqual(other.stitchMm);
      expect(one.perStop.map(({ stitches }: { stitches: number }) => stitches)).toEqual(
        other.perStop.map(({ stitches }: { stitches: number }) => stitches),
      );
    },
    patient,
  );

  it(
    'takes a stitch file apart by itself, says so, draws it, and is overruled by the maker',
    async () => {
      const seams = await seamwright(
        folder,
        'seams',
        'pieced.dst',
        '--out',
        'm.svg',
        '--stops-out',
        'n.svg',
        '--json',
      );
      expect([seams.stderr, seams.status]).toEqual(['', 0]);
      const found = JSON.parse(seams.stdout);
      expect(found.stops[0]).toMatchObject({ stop: 1, role: 'map' });
      expect(found.seams.length).toBeGreaterThan(8);
      expect(read('n.svg').toString()).toContain('stop 3, seam');
      const dressed = await seamwright(
        folder,
        'dress',
        'pieced.dst',
        '--out',
        'o.dst',
        '--json',
        '--role',
        '1=other,2=other',
        '--save',
        'o.dressing.json',
      );
      const { findings } = JSON.parse(dressed.stdout);
      const note = findings.find(({ code }: { code: string }) => code === 'stops-recognized');
      expect(note.message).toContain(`the seams come from ${SEAM_STOPS.slice(0, 2).join(', ')}`);
      expect(JSON.parse(read('o.dressing.json').toString()).block.roles).toEqual([
        { stop: 1, role: 'other' },
        { stop: 2, role: 'other' },
      ]);
      // the sheet of what was saved knows it as well: no piece is laid where the map would ask for one
      const sheet = await seamwright(folder, 'sheet', 'o.dressing.json', '--out', 'o.pdf', '--json');
      const halts: { before: number }[] = JSON.parse(sheet.stdout).sheet.halts;
      expect(halts[0].before).toBe(3);
    },
    patient,
  );

  it(
    'sews what helps to hoop a finished block first, and leaves the stops of a stitch file out when told',
    async () => {
      const how = ['--placement', '--basting', '8', '--align', '2@1', '--json'];
      const { stdout } = await seamwright(folder, 'dress', 'block.svg', ...how);
      const kinds = (text: string) => JSON.parse(text).stops.map(({ kind }: { kind: string }) => kind);
      expect(kinds(stdout).slice(0, 4)).toEqual(['placement', 'basting', 'alignment', 'treatment']);
      const stops = ['--stops', SEAM_STOPS.join(','), '--json'];
      const whole = await seamwright(folder, 'dress', 'pieced.dst', ...stops);
      const alone = await seamwright(folder, 'dress', 'pieced.dst', ...stops, '--alone');
      expect(kinds(whole.stdout)).toContain('existing');
      expect(kinds(alone.stdout)).toEqual(kinds(whole.stdout).filter((kind: string) => kind !== 'existing'));
    },
    patient,
  );

  it(
    'gives the same bytes from a saved dressing as from the options that it was saved with',
    async () => {
      const how = ['--stitch', 'feather', '--width', '7', '--ends', 'short', '--seam', '1'];
      await seamwright(folder, 'dress', 'block.svg', ...how, '--out', 'b.dst', 'b.dressing.json', 'b.svg');
      const { status } = await seamwright(folder, 'dress', 'b.dressing.json', '--out', 'c.dst', 'c.svg');
      expect(status).toBe(0);
      expect(read('c.dst').equals(read('b.dst').subarray())).toBe(true);
      expect(read('c.svg').toString()).toBe(read('b.svg').toString());
    },
    patient,
  );

  it(
    'prints exactly one JSON document, in the shape that is promised',
    async () => {
      const { stdout } = await seamwright(folder, 'dress', 'block.svg', '--json');
      const report = JSON.parse(stdout);
      expect(Object.keys(report)).toEqual(['stops', 'fits', 'totals', 'hoop', 'outputs', 'findings']);
      expect(report.fits.map(({ seam }: { seam: number }) => seam)).toEqual([1, 2]);
      expect(report.totals.stops).toBe(report.stops.length);
    },
    patient,
  );

  it(
    'tells what was found in a block',
    async () => {
      const found = JSON.parse((await seamwright(folder, 'seams', 'block.svg', '--json')).stdout);
      expect(found.block).toEqual({ widthMm: 90, heightMm: 60 });
      expect(found.seams.map(({ lengthMm }: { lengthMm: number }) => lengthMm)).toEqual([90, 30]);
      expect(found.patches.map(({ fabric }: { fabric: string }) => fabric).sort()).toEqual([
        '#35435f',
        '#6d7743',
        '#a5563f',
      ]);
      expect(found.junctions.find(({ onOutline }: { onOutline: boolean }) => !onOutline)).toMatchObject({
        at: [40, 30],
        seams: [1, 2],
        through: 1,
      });
    },
    patient,
  );

  it(
    'draws the seam map',
    async () => {
      const { status } = await seamwright(folder, 'seams', 'block.svg', '--out', 'map.svg');
      expect(status).toBe(0);
      expect(read('map.svg').toString()).toContain('<title>seam 2</title>');
    },
    patient,
  );

  it.each(['marked.svg', 'drawing-by-another-name.txt'])(
    'knows a drawing by its content: %s',
    async (name) => {
      const { status, stdout } = await seamwright(folder, 'seams', name);
      expect(status).toBe(0);
      expect(stdout).toContain('2 seams');
    },
    patient,
  );

  it(
    'lists the color stops of a stitch file',
    async () => {
      const { stdout } = await seamwright(folder, 'seams', 'pieced.dst', '--json');
      expect(JSON.parse(stdout).stops.length).toBeGreaterThan(Math.max(...SEAM_STOPS));
    },
    patient,
  );

  it(
    'dresses a pieced stitch file and keeps what it already sews',
    async () => {
      const words = ['dress', 'pieced.dst', '--stops', SEAM_STOPS.join(','), '--out', 'dressed.dst'];
      const { status, stdout, stderr } = await seamwright(folder, ...words);
      expect(stderr).toBe('');
      expect(stdout).toContain(`after stop ${Math.max(...SEAM_STOPS)}`);
      expect(status).toBeLessThan(2);
      const [was, is] = [read('pieced.dst'), read('dressed.dst')];
      expect(is.length).toBeGreaterThan(was.length);
      expect(is.subarray(512, 2000).equals(was.subarray(512, 2000))).toBe(true);
    },
    patient,
  );

  it(
    'shows the dictionary, and one stitch by any of its names',
    async () => {
      const all = JSON.parse((await seamwright(folder, 'stitches', '--json')).stdout);
      expect(all.stitches.length).toBeGreaterThanOrEqual(8);
      expect((await seamwright(folder, 'stitches', 'Herringbone')).stdout).toContain('repeat');
    },
    patient,
  );

  it(
    'sews swatches of stitches, ornaments and treatments',
    async () => {
      const { stitches } = JSON.parse((await seamwright(folder, 'stitches', '--json')).stdout);
      const some = stitches.filter((_: unknown, i: number) => i % 12 === 0);
      for (const { name } of [...some, { name: 'daisy' }, { name: 'feather-knots' }]) {
        const { status, stderr } = await seamwright(folder, 'swatch', name, '--out', `${name}.dst`);
        expect([name, status, stderr]).toEqual([name, 0, '']);
      }
    },
    patient,
  );
});

describe('a wish for help', () => {
  it(
    'is told of a command of the library as well, wherever it stands',
    async () => {
      const ways = ['help library copy', 'library help copy', 'library copy --help'];
      const told = await Promise.all(ways.map((way) => seamwright(folder, ...way.split(' '))));
      expect(told.map(({ status, stderr }) => [status, stderr])).toEqual(ways.map(() => [0, '']));
      expect(told[0].stdout).toMatch(/^Usage: seamwright library copy /);
      expect(new Set(told.map(({ stdout }) => stdout)).size).toBe(1);
    },
    patient,
  );
});

describe('a reader that has seen enough', () => {
  it(
    'ends the run quietly',
    async () => {
      const { status, stderr } = await seamwrightUnread(folder, 'stitches', '--json');
      expect([status, stderr]).toEqual([0, '']);
    },
    patient,
  );
});
