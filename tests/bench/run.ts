/**
 * npm run bench: what the main job costs, on one core. Seeded; prints the least, the median and the most of several
 * runs, and a checksum of the bytes, so that a faster answer is known to be the same answer.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Block } from '../../src/block/block.js';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { account } from '../../src/design/account.js';
import { writeDesign } from '../../src/design/write-design.js';
import { dress } from '../../src/dress.js';
import type { BlockSource } from '../../src/formats/dressing.js';
import { defaultDressing } from '../../src/plan.js';
import { dictionary } from '../stitches/dictionary.js';
import { cutBlock } from './many-seams.js';

const library = new Map(dictionary.map((stitch) => [stitch.name, stitch]));
const panel = new URL('../../gallery/demo/panel.svg', import.meta.url);
const source: BlockSource = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };

interface Spread {
  readonly least: number;
  readonly median: number;
  readonly most: number;
}

async function timed(runs: number, work: () => unknown): Promise<Spread> {
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return { least: times[0], median: times[runs >> 1], most: times[runs - 1] };
}

const ms = ({ least, median, most }: Spread) =>
  `${median.toFixed(1)} ms (${least.toFixed(1)} to ${most.toFixed(1)})`;
const checksum = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex').slice(0, 12);

console.log(`${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}\n`);

const text = readFileSync(panel, 'utf8');
console.log(`read the demo block      ${ms(await timed(15, () => readSvgBlock(text, 'panel.svg', source)))}`);
const demo = await readSvgBlock(text, 'panel.svg', source);
const dressing = defaultDressing(demo.map, { source, library });
console.log(`dress it, in process     ${ms(await timed(15, () => dress(demo, dressing, library)))}`);

const out = mkdtempSync(join(tmpdir(), 'seamwright-bench-'));
const cli = new URL('../../dist/cli/main.js', import.meta.url).pathname;
const whole = await timed(9, () => {
  const { status, stderr } = spawnSync(
    process.execPath,
    [cli, 'dress', panel.pathname, '--out', join(out, 'a.dst'), join(out, 'a.svg')],
    { encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(stderr);
});
console.log(`dress, whole process     ${ms(whole)}`);
console.log(`  bytes ${checksum(readFileSync(join(out, 'a.dst')))}\n`);
rmSync(out, { recursive: true });

console.log('from seam map to stitch file:');
for (const [size, runs] of [
  [230, 9],
  [1050, 5],
  [3800, 3],
] as const) {
  const map = cutBlock(size, 220, 7);
  const block: Block = { name: 'bench', map, existing: null, stops: [], origin: [0, 0], findings: [] };
  const plan = defaultDressing(map, { source, library });
  let bytes = new Uint8Array();
  let stitches = 0;
  const spread = await timed(runs, () => {
    const { design } = dress(block, plan, library);
    bytes = new Uint8Array(writeDesign(design));
    stitches = account(design).totals.stitches;
  });
  console.log(
    `  ${String(map.seams.length).padStart(5)} seams, ${String(stitches).padStart(8)} stitches: ${ms(spread)}, ` +
      `${((spread.median * 1000) / stitches).toFixed(2)} microseconds a stitch, bytes ${checksum(bytes)}`,
  );
}
