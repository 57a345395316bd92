import type { Difference } from './difference.js';
import { type Fabric, type FabricColor, fabricOf } from './fabric.js';
import { channels, channelValue, hexOfChannels, lightOf } from './light.js';

/** Pixels by rows, four bytes each: red, green, blue, opacity. */
interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** What the eye takes in at once beside a line of thread, mm: a stroke of pearl cotton and the cloth next to it. Our own choice. */
const STROKE = 1;
/** Colors are told in cells as fine as a single thread, mm, so that those of a small print are not mixed. */
const THREAD = 0.25;
/** A picture is looked at in no more cells than this either way: beyond that they get larger. */
const MOST_CELLS = 400;
/** Colors nearer than this by CIEDE2000 are one color of a fabric. Our own choice. */
const ONE_COLOR = 12;
/** Neighboring cells that differ by this much look restless at once. Our own choice. */
const RESTLESS = 25;
/** A fabric has no more main colors than this, and none with less of it than this share. */
const MOST_COLORS = 5;
const LEAST_SHARE = 0.05;
/** Rounds after which the colors have settled. */
const ROUNDS = 12;

/**
 * The main colors of a fabric by their shares, and how busy it is, from its picture. What is mostly transparent is not
 * looked at; null when all is.
 *
 * @param widthMm how wide the piece of fabric in the picture is
 */
export function pictureFabric(picture: Pixels, widthMm: number, difference: Difference): Fabric | null {
  const { hex } = cellsOf(picture, widthMm / THREAD);
  if (hex.every((one) => one === null)) return null;
  return fabricOf(mainColors(hex, difference), busyness(cellsOf(picture, widthMm / STROKE), difference));
}

interface Cells {
  readonly across: number;
  readonly down: number;
  /** row by row; null where the picture is transparent */
  readonly hex: readonly (string | null)[];
}

/** Square cells in the mean of their light, as the eye mixes colors that are too small to be told apart. */
function cellsOf({ width, height, data }: Pixels, wanted: number): Cells {
  const across = Math.max(1, Math.min(width, MOST_CELLS, Math.round(wanted)));
  const down = Math.max(1, Math.min(height, MOST_CELLS, Math.round((across * height) / width)));
  const sums = new Float64Array(4 * across * down);
  const counts = new Int32Array(across * down);
  for (let y = 0; y < height; y++) {
    const row = Math.floor((y * down) / height) * across;
    for (let x = 0; x < width; x++) {
      const cell = row + Math.floor((x * across) / width);
      counts[cell]++;
      const at = 4 * (y * width + x);
      if (data[at + 3] < 128) continue;
      for (let c = 0; c < 3; c++) sums[4 * cell + c] += lightOf(data[at + c]);
      sums[4 * cell + 3]++;
    }
  }
  const hex = Array.from(counts, (count, cell) => {
    const seen = sums[4 * cell + 3];
    return seen * 2 < count ? null : hexOfLight([0, 1, 2].map((c) => sums[4 * cell + c] / seen));
  });
  return { across, down, hex };
}

const hexOfLight = (light: readonly number[]): string => hexOfChannels(light.map(channelValue));

/** How much neighboring cells differ, in the mean: 0 for a plain fabric, 1 where each is restless beside the next. */
function busyness({ across, down, hex }: Cells, difference: Difference): number {
  let [sum, pairs] = [0, 0];
  const look = (a: string | null, b: string | null) => {
    if (a === null || b === null) return;
    pairs++;
    sum += Math.min(1, difference(a, b) / RESTLESS);
  };
  for (let y = 0; y < down; y++) {
    for (let x = 0; x < across; x++) {
      const at = y * across + x;
      if (x + 1 < across) look(hex[at], hex[at + 1]);
      if (y + 1 < down) look(hex[at], hex[at + across]);
    }
  }
  return pairs ? Math.round((100 * sum) / pairs) / 100 : 0;
}

/**
 * Colors by k-means (S. Lloyd, 1982) with the difference that the eye sees: the first is the commonest, each further one
 * the color that differs most from those taken, as long as it is another color; then means and members in turn.
 */
function mainColors(cells: readonly (string | null)[], difference: Difference): FabricColor[] {
  const counts = new Map<string, number>();
  for (const hex of cells) if (hex !== null) counts.set(coarse(hex), (counts.get(coarse(hex)) ?? 0) + 1);
  const colors = [...counts].sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1));
  const total = colors.reduce((sum, [, count]) => sum + count, 0);
  let centers = [colors[0][0]];
  while (centers.length < MOST_COLORS) {
    // a color that few cells have is no main color, however different it is
    const gaps = colors.map(([hex, count]) => {
      const gap = Math.min(...centers.map((center) => difference(hex, center)));
      return gap < ONE_COLOR ? 0 : gap * Math.sqrt(count / total);
    });
    const most = Math.max(...gaps);
    if (most === 0) break;
    centers.push(colors[gaps.indexOf(most)][0]);
  }
  let members: FabricColor[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    members = groups(colors, centers, difference).filter(({ share }) => share > 0);
    const next = members.map(({ hex }) => hex);
    if (`${next}` === `${centers}`) break;
    centers = next;
  }
  return joined(members, difference).filter(
    ({ share }, _, all) => share >= LEAST_SHARE * total || all.length === 1,
  );
}

/** Colors that hardly differ counted together: they would only cost time. */
const coarse = (hex: string): string =>
  hexOfChannels(channels(hex).map((value) => Math.min(255, 8 * Math.round(value / 8))));

function groups(
  colors: readonly (readonly [string, number])[],
  centers: readonly string[],
  difference: Difference,
): FabricColor[] {
  const light = centers.map(() => [0, 0, 0]);
  const shares = centers.map(() => 0);
  for (const [hex, count] of colors) {
    const gaps = centers.map((center) => difference(hex, center));
    const own = gaps.indexOf(Math.min(...gaps));
    shares[own] += count;
    channels(hex).forEach((value, c) => {
      light[own][c] += count * lightOf(value);
    });
  }
  return shares.map((share, k) => ({
    hex: share ? hexOfLight(light[k].map((value) => value / share)) : centers[k],
    share,
  }));
}

/** Groups whose colors came to lie close together are one. */
function joined(groups: readonly FabricColor[], difference: Difference): FabricColor[] {
  const list = [...groups].sort((a, b) => b.share - a.share);
  const apart: FabricColor[] = [];
  for (const one of list) {
    const near = apart.findIndex(({ hex }) => difference(hex, one.hex) < ONE_COLOR);
    if (near < 0) apart.push(one);
    else apart[near] = { hex: apart[near].hex, share: apart[near].share + one.share };
  }
  return apart;
}
