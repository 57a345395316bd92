import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { contents, newFolder, removeFolder, seamwright } from './run-cli.js';

const block = `<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="60mm" viewBox="0 0 90 60">
  <path fill="#6d7743" d="M0 0H90V30H0Z"/><path fill="#a5563f" d="M0 30H40V60H0Z"/><path fill="#35435f" d="M40 30H90V60H40Z"/>
</svg>`;
const folder = newFolder();
const patient = 120_000;
beforeAll(async () => {
  writeFileSync(join(folder, 'block.svg'), block);
  await seamwright(folder, 'dress', 'block.svg', '--stitch', 'feather', '--save', 'block.dressing.json');
}, patient);
afterAll(() => removeFolder(folder));

it(
  'a sampler begins with its last treatment at the latest, and says which that is: two that are alike are one',
  async () => {
    const last = await seamwright(folder, 'sampler', 'block.dressing.json', '--from', '1', '--json');
    expect(JSON.parse(last.stdout).samples).toEqual([{ number: 1, line: 1, seams: [1, 2] }]);
    const before = contents(folder);
    const beyond = await seamwright(
      ...[folder, 'sampler', 'block.dressing.json', '--from', '2', '--out', 's.dst'],
    );
    expect(beyond).toEqual({
      status: 2,
      stdout: '',
      stderr:
        'seamwright: --from 2: is beyond the last of its treatments; it has 1, those alike counted once\n',
    });
    expect(contents(folder)).toEqual(before);
  },
  patient,
);
