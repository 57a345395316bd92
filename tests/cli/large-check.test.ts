import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { LIMITS } from '../../src/check/density/limits.js';
import { examineRecords } from '../../src/check/examine.js';
import { DstWriter } from '../../src/formats/dst-write.js';
import { checkReport } from '../../src/report/check-report.js';
import { newFolder, removeFolder, seamwright } from './run-cli.js';

/** Rows of stitches of 3 mm, to and fro over 240 mm, in three colors: more than one thread counts. */
function rows(): DstWriter {
  const pen = new DstWriter();
  for (let row = 0; row < 2700; row++) {
    if (row > 0 && row % 900 === 0) pen.change();
    const way = row % 2 === 0 ? 30 : -30;
    for (let i = 0; i < 80; i++) pen.stitch(way, (i + row) % 5 === 0 ? 1 : 0);
    pen.stitch(0, -15);
  }
  return pen;
}

it('the density of a large stitch file, counted by two threads, is what one counts', async () => {
  const folder = newFolder();
  const pen = rows();
  writeFileSync(join(folder, 'large.dst'), pen.file('large'));
  const { stdout, stderr } = await seamwright(folder, 'check', 'large.dst', '--json');
  removeFolder(folder);
  const { hoop, findings, ...counted } = checkReport(examineRecords(pen.records(), LIMITS.firm), null, []);
  expect(stderr).toBe('');
  expect(JSON.parse(stdout)).toMatchObject(JSON.parse(JSON.stringify(counted)));
}, 120_000);
