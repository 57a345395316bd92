/**
 * npm run bench: what the main job costs, on one core, measured on the built files, which run as users run them. Seeded;
 * prints the least, the median and the most of several runs, and a checksum of the bytes, so that a faster answer is
 * known to be the same answer.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Block } from '../../src/block/block.js';
import type { BlockSource } from '../../src/formats/dressing.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import { stitchFiles } from '../stitches/dictionary.js';
import { cutBlock } from './many-seams.js';

const dist = new URL('../../dist/', import.meta.url);
const built = <Module>(path: string): Promise<Module> => import(new URL(path, dist).href);
const { buildSeamMap } =
  await built<typeof import('../../src/block/build-seam-map.js')>('block/build-seam-map.js');
const { readSvgBlock } =
  await built<typeof import('../../src/block/read-drawing.js')>('block/read-drawing.js');
const { account } = await built<typeof import('../../src/design/account.js')>('design/account.js');
const { writeDesign } =
  await built<typeof import('../../src/design/write-design.js')>('design/write-design.js');
const { dress } = await built<typeof import('../../src/dress.js')>('dress.js');
const { defaultDressing } = await built<typeof import('../../src/plan.js')>('plan.js');
const { parseStitch } = await built<typeof import('../../src/stitches/parse.js')>('stitches/parse.js');

// read by the built parser, as the built command line reads it
const builtIn: Dictionary = {
  stitches: new Map(stitchFiles.map(({ name, text }) => [name, parseStitch(text, name)])),
  ornaments: new Map(),
  treatments: new Map(),
};

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
const dressing = defaultDressing(demo.map, { source, dictionary: builtIn });
console.log(`dress it, in process     ${ms(await timed(15, () => dress(demo, dressing, builtIn)))}`);

const out = mkdtempSync(join(tmpdir(), 'seamwright-bench-'));
const cli = new URL('cli/main.js', dist).pathname;
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
  [300, 21],
  [960, 9],
  [2960, 5],
] as const) {
  const { map } = buildSeamMap(cutBlock(size, 220, 7));
  const block: Block = { name: 'bench', map, existing: null, stops: [], origin: [0, 0], findings: [] };
  const plan = defaultDressing(map, { source, dictionary: builtIn });
  let bytes = new Uint8Array();
  const spread = await timed(runs, () => {
    bytes = new Uint8Array(writeDesign(dress(block, plan, builtIn).design));
  });
  const { stitches } = account(dress(block, plan, builtIn).design).totals;
  console.log(
    `  ${String(map.seams.length).padStart(5)} seams, ${String(stitches).padStart(8)} stitches: ${ms(spread)}, ` +
      `${((spread.median * 1000) / stitches).toFixed(2)} microseconds a stitch, bytes ${checksum(bytes)}`,
  );
}
