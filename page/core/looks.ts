import { loadDifference } from '../../src/color/difference.js';
import { limitsAsked } from '../../src/density-limits.js';
import { overlaysToldApart } from '../../src/draw/overlays/overlay-picture.js';
import { workOfDressed } from '../../src/draw/overlays/work-of-dressed.js';
import type { Dressed } from '../../src/dress.js';
import { examineDressed } from '../../src/examine-dressed.js';
import { type Finding, worstFirst } from '../../src/finding.js';
import type { LengthUnit } from '../../src/geometry/units.js';
import { threadLook } from '../../src/thread-look.js';
import type { Look, Looked } from './messages.js';

/** What the page looks at, drawn over the block at true size, with lengths as the maker measures. */
export function lookOf(dressed: Dressed, shown: Looked, unit: LengthUnit, least: number): Look {
  const { svg, told } = overlaysToldApart(
    workOfDressed(dressed),
    new Set([shown]),
    limitsAsked(dressed.dressing.density),
    unit,
    least,
  );
  const [left, top] = /viewBox="([^"]*)"/.exec(svg)![1].split(' ').map(Number);
  return { svg, left, top, told };
}

/** Everything worth a look, the worst first. */
export async function examined(dressed: Dressed): Promise<readonly Finding[]> {
  const { findings } = examineDressed(dressed);
  const look = threadLook(dressed, await loadDifference());
  return worstFirst([...dressed.findings, ...findings, ...look.findings]);
}
