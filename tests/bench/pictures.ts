/** What pictures cost, from the dressed block to the bytes of a PNG at 300 dots to the inch. */
import type { Block } from '../../src/block/block.js';
import type { BlockSource } from '../../src/formats/dressing.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import { built, checksum, ms, timed } from './built.js';
import { cutBlock } from './many-seams.js';

const { buildSeamMap } =
  await built<typeof import('../../src/block/build-seam-map.js')>('block/build-seam-map.js');
const { stitchesOf } = await built<typeof import('../../src/check/density/sewn-stitches.js')>(
  'check/density/sewn-stitches.js',
);
const { LIMITS } = await built<typeof import('../../src/check/density/limits.js')>('check/density/limits.js');
const { rasterize } = await built<typeof import('../../src/cli/rasterize.js')>('cli/rasterize.js');
const { drawDressed } =
  await built<typeof import('../../src/draw/dressed-picture.js')>('draw/dressed-picture.js');
const { drawOverlays } = await built<typeof import('../../src/draw/overlays/overlay-picture.js')>(
  'draw/overlays/overlay-picture.js',
);
const { workOfDressed } = await built<typeof import('../../src/draw/overlays/work-of-dressed.js')>(
  'draw/overlays/work-of-dressed.js',
);
const { dress } = await built<typeof import('../../src/dress.js')>('dress.js');
const { defaultDressing } = await built<typeof import('../../src/plan.js')>('plan.js');

/** A square of the cloth of 130 x 180 mm. */
const SIDE = Math.round(Math.sqrt(130 * 180));

export async function benchPictures(dictionary: Dictionary): Promise<void> {
  const source: BlockSource = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };
  console.log(
    `\npictures of ${SIDE} x ${SIDE} mm, as much cloth as 130 x 180, as PNG at 300 dots to the inch:`,
  );
  for (const [patch, runs] of [
    [90, 9],
    [45, 9],
    [16, 7],
    [9, 5],
  ] as const) {
    const { map } = buildSeamMap(cutBlock(SIDE, patch, 7));
    const block: Block = { name: 'bench', map, existing: null, stops: [], origin: [0, 0], findings: [] };
    const dressed = dress(block, defaultDressing(map, { source, dictionary }), dictionary);
    const stitches = stitchesOf(dressed.design).ends.length / 4;
    let svg = '';
    const drawn = await timed(runs, () => {
      svg = drawDressed(dressed);
    });
    let png = new Uint8Array();
    const whole = await timed(runs, () => {
      png = new Uint8Array(rasterize(drawDressed(dressed)));
    });
    const density = await timed(runs, () =>
      rasterize(drawOverlays(workOfDressed(dressed), new Set(['density']), LIMITS.firm)),
    );
    console.log(
      `${String(stitches).padStart(8)} stitches: thread ${ms(whole)}, of that as SVG ${ms(drawn)}, ` +
        `${(svg.length / 1e6).toFixed(1)} MB; density ${ms(density)}; bytes ${checksum(png)}`,
    );
  }
}
