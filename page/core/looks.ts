import { type Cloth, LIMITS } from '../../src/check/density/limits.js';
import { loadDifference } from '../../src/color/difference.js';
import { drawOverlays } from '../../src/draw/overlays/overlay-picture.js';
import { workOfDressed } from '../../src/draw/overlays/work-of-dressed.js';
import type { Dressed } from '../../src/dress.js';
import { examineDressed } from '../../src/examine-dressed.js';
import { type Finding, worstFirst } from '../../src/finding.js';
import { threadLook } from '../../src/thread-look.js';
import type { Look, Looked } from './messages.js';

/** What the page looks at, drawn over the block at true size. */
export function lookOf(dressed: Dressed, shown: Looked, cloth: Cloth = 'firm'): Look {
  const svg = drawOverlays(workOfDressed(dressed), new Set([shown]), LIMITS[cloth]);
  const [left, top] = /viewBox="([^"]*)"/.exec(svg)![1].split(' ').map(Number);
  return { svg, left, top };
}

/** Everything worth a look on some kind of cloth, the worst first. */
export async function examined(dressed: Dressed, cloth: Cloth = 'firm'): Promise<readonly Finding[]> {
  const { findings } = examineDressed(dressed, LIMITS[cloth]);
  const look = threadLook(dressed, await loadDifference());
  return worstFirst([...dressed.findings, ...findings, ...look.findings]);
}
