import type { Finding } from '../finding.js';
import type { Points } from '../geometry/polyline.js';
import { fitIn, HOOPS, smallestHoop } from './hoops.js';

export interface Field {
  readonly width: number;
  readonly height: number;
}

/** The room that a block and all stitches on it take, mm: stitches may run past the outline. */
export function sewnField({ width, height }: Field, lines: readonly Points[]): Field {
  let [left, top, right, bottom] = [0, 0, width, height];
  for (const xy of lines) {
    for (let i = 0; i < xy.length; i += 2) {
      left = Math.min(left, xy[i]);
      right = Math.max(right, xy[i]);
      top = Math.min(top, xy[i + 1]);
      bottom = Math.max(bottom, xy[i + 1]);
    }
  }
  return { width: right - left, height: bottom - top };
}

/**
 * What is to be said of the room that the work takes in the hoop.
 *
 * @param block alone
 * @param sewn with all that is sewn on it, and without a basting box
 */
export function roomFindings(
  {
    hoop,
    hooping: { basting } = {},
  }: { readonly hoop: Field | null; readonly hooping?: { readonly basting?: number } },
  block: Field,
  sewn: Field,
  unbasted: Field,
): Finding[] {
  if (!hoop) return uncommonFindings(sewn);
  if (basting === undefined || fitIn(hoop, sewn).fits || !fitIn(hoop, unbasted).fits)
    return hoopFindings(hoop, sewn);
  const beside = (a: Field) => Math.min(a.width - block.width, a.height - block.height) / 2;
  const most =
    Math.floor(10 * Math.max(beside(hoop), beside({ width: hoop.height, height: hoop.width })) + 1e-6) / 10;
  const remedy = most >= 1 ? `--basting ${most} would fit` : 'do without it';
  return [
    {
      level: 'error',
      code: 'basting-too-wide',
      message: `the block fits the sewing field of ${size(hoop)}, a basting box ${basting} mm outside it does not; ${remedy}`,
    },
  ];
}

/** No hoop is named, and no common one takes the work. */
function uncommonFindings(sewn: Field): Finding[] {
  if (smallestHoop(sewn)) return [];
  const largest = HOOPS[HOOPS.length - 1];
  return [
    {
      level: 'note',
      code: 'no-common-hoop',
      message:
        `the block with its stitches is ${size(sewn)}, more than a common sewing field takes: the largest is ${size(largest)}, ` +
        `in which it would fit at ${percentIn(largest, sewn)} %`,
    },
  ];
}

/** The largest whole share at which something fits, either way, in percent. */
function percentIn(hoop: Field, sewn: Field): number {
  const scale = (a: Field) => Math.min(a.width / sewn.width, a.height / sewn.height);
  return Math.floor(100 * Math.max(scale(hoop), scale({ width: hoop.height, height: hoop.width })) + 1e-9);
}

/** A block that fits the sewing field in neither orientation is an error, with the scale that would fit. */
export function hoopFindings(hoop: Field | null, block: Field): Finding[] {
  if (!hoop || fitIn(hoop, block).fits) return [];
  return [
    {
      level: 'error',
      code: 'hoop-too-small',
      message:
        `the block with its stitches is ${size(block)} and does not fit the sewing field of ${size(hoop)}; ` +
        `at ${percentIn(hoop, block)} % it would`,
    },
  ];
}

const size = (field: Field) => `${round(field.width)} x ${round(field.height)} mm`;
const round = (value: number) => Math.round(value * 10) / 10;
