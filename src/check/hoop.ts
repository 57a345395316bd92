import type { Finding } from '../finding.js';
import type { Points } from '../geometry/polyline.js';
import { fitIn } from './hoops.js';

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

/** A block that fits the sewing field in neither orientation is an error, with the scale that would fit. */
export function hoopFindings(hoop: Field | null, block: Field): Finding[] {
  if (!hoop || fitIn(hoop, block).fits) return [];
  const scale = (a: Field) => Math.min(a.width / block.width, a.height / block.height);
  const best = Math.max(scale(hoop), scale({ width: hoop.height, height: hoop.width }));
  const size = (field: Field) => `${round(field.width)} x ${round(field.height)} mm`;
  return [
    {
      level: 'error',
      code: 'hoop-too-small',
      message:
        `the block with its stitches is ${size(block)} and does not fit the sewing field of ${size(hoop)}; ` +
        `at ${Math.floor(best * 100)} % it would`,
    },
  ];
}

const round = (value: number) => Math.round(value * 10) / 10;
