import type { Finding } from '../finding.js';

export interface Field {
  readonly width: number;
  readonly height: number;
}

/** A block that fits the sewing field in neither orientation is an error, with the scale that would fit. */
export function hoopFindings(hoop: Field | null, block: Field): Finding[] {
  if (!hoop || fits(hoop, block) || fits({ width: hoop.height, height: hoop.width }, block)) return [];
  const scale = (a: Field) => Math.min(a.width / block.width, a.height / block.height);
  const best = Math.max(scale(hoop), scale({ width: hoop.height, height: hoop.width }));
  const size = (field: Field) => `${round(field.width)} x ${round(field.height)} mm`;
  return [
    {
      level: 'error',
      code: 'hoop-too-small',
      message:
        `the block is ${size(block)} and does not fit the sewing field of ${size(hoop)}; ` +
        `at ${Math.floor(best * 100)} % it would`,
    },
  ];
}

const fits = (hoop: Field, block: Field) =>
  block.width <= hoop.width + 1e-9 && block.height <= hoop.height + 1e-9;
const round = (value: number) => Math.round(value * 10) / 10;
