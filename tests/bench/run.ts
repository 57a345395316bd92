/**
 * npm run bench: what the main job costs, on one core but where it says otherwise, measured on the built files, which
 * run as users run them. Seeded; prints the median, the least and the most of several runs after a first one (for the cost
 * a stitch after three seconds of them, so that every size is measured alike), and a checksum of the bytes, so that a faster answer is known to be the same answer.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Block } from '../../src/block/block.js';
import type { BlockSource } from '../../src/formats/dressing.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import { stitchFiles } from '../stitches/dictionary.js';
import { built, builtPath, checksum, ms, msAndFirst, timed } from './built.js';
import { cutBlock } from './many-seams.js';
import { benchPictures } from './pictures.js';
import { benchStitchFiles } from './stitch-files.js';

const { buildSeamMap } =
  await built<typeof import('../../src/block/build-seam-map.js')>('block/build-seam-map.js');
const { readSvgBlock } =
  await built<typeof import('../../src/block/read-drawing.js')>('block/read-drawing.js');
const { account } = await built<typeof import('../../src/design/account.js')>('design/account.js');
const { density } =
  await built<typeof import('../../src/check/density/density.js')>('check/density/density.js');
const { stitchesOf } = await built<typeof import('../../src/check/density/sewn-stitches.js')>(
  'check/density/sewn-stitches.js',
);
const { crewOfTwo } = await built<typeof import('../../src/cli/density-crew.js')>('cli/density-crew.js');
const { askedLines } = await built<typeof import('../../src/asked/lines.js')>('asked/lines.js');
const { fitLines } = await built<typeof import('../../src/fit/fit-lines.js')>('fit/fit-lines.js');
const { Memory } = await built<typeof import('../../src/fit/memory.js')>('fit/memory.js');
const { sized } = await built<typeof import('../../src/fit/sized.js')>('fit/sized.js');
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

console.log(`${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}\n`);

const text = readFileSync(panel, 'utf8');
console.log(
  `read the demo block      ${msAndFirst(await timed(31, () => readSvgBlock(text, 'panel.svg', source)))}`,
);
const demo = await readSvgBlock(text, 'panel.svg', source);
const dressing = defaultDressing(demo.map, { source, dictionary: builtIn });
console.log(`dress it, in process     ${msAndFirst(await timed(31, () => dress(demo, dressing, builtIn)))}`);

const out = mkdtempSync(join(tmpdir(), 'seamwright-bench-'));
const cli = builtPath('cli/seamwright.cjs');
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

/** A square block of about the size, cut into patches of the width given; its default dressing. */
function workOf(size: number, patch: number) {
  const { map } = buildSeamMap(cutBlock(size, patch, 7));
  const block: Block = { name: 'bench', map, existing: null, stops: [], origin: [0, 0], findings: [] };
  return { block, plan: defaultDressing(map, { source, dictionary: builtIn }) };
}
const padded = (count: number, what: string) => `${String(count).padStart(8)} ${what}`;

/** Long enough for any size to be measured when its code is fast, ms. */
const WARMING = 3000;

console.log('from seam map to stitch file, and its density:');
for (const [size, runs] of [
  [300, 201],
  [960, 15],
  [2960, 5],
] as const) {
  const { block, plan } = workOf(size, 220);
  let bytes = new Uint8Array();
  const spread = await timed(
    runs,
    () => {
      bytes = new Uint8Array(writeDesign(dress(block, plan, builtIn).design));
    },
    WARMING,
  );
  const { design } = dress(block, plan, builtIn);
  const { stitches } = account(design).totals;
  const alone = await timed(3, () => density(stitchesOf(design)));
  const byTwo = await timed(3, () => density(stitchesOf(design), crewOfTwo));
  console.log(
    `${padded(stitches, 'stitches')}: ${msAndFirst(spread)}, ${((spread.median * 1000) / stitches).toFixed(2)} microseconds a stitch, ` +
      `bytes ${checksum(bytes)}; density ${ms(alone)}, as check has it counted ${ms(byTwo)}`,
  );
}

console.log('\nas seams grow, patches of 60 mm:');
for (const [size, runs] of [
  [120, 31],
  [380, 15],
  [1200, 9],
  [3800, 1],
] as const) {
  const { block, plan } = workOf(size, 60);
  const spread = await timed(runs, () => dress(block, plan, builtIn));
  const { length } = block.map.seams;
  console.log(
    `${padded(length, 'seams')}: ${msAndFirst(spread)}, ${(spread.median / length).toFixed(2)} ms a seam`,
  );
}

console.log('\none seam of many refitted, with another repeat:');
for (const size of [380, 1200]) {
  const { block, plan } = workOf(size, 60);
  const asks = askedLines(block.map, plan, builtIn).lines.map(({ ask }) => ask);
  const memory = new Memory();
  fitLines(block.map, asks, plan, memory);
  const times: number[] = [];
  for (let i = 0; i < 400; i++) {
    const k = (i * 7919) % asks.length;
    const { stitch, repeat } = asks[k].sized;
    const most = stitch.parameters.find(({ name }) => name === 'repeat')!.max;
    asks[k] = { ...asks[k], sized: sized(stitch, { repeat: Math.min(most, repeat * 1.02) }) };
    const start = performance.now();
    fitLines(block.map, asks, plan, memory);
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  console.log(
    `${padded(block.map.seams.length, 'seams')}: median ${times[200].toFixed(1)} ms, 95 % below ${times[380].toFixed(1)} ms`,
  );
}

await benchPictures(builtIn);
await benchStitchFiles();
