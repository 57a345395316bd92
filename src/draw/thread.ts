import type { Runs } from '../needle/run.js';
import { shifted, traceLine } from './pen.js';
import { sewnPieces } from './pieces.js';
import { body, shadowSide, sheen } from './shade.js';
import { element } from './svg.js';
import { pathData } from './svg-pen.js';

/** How thread shares its width between the shaded edge, the lit body and the sheen. */
const BODY = 0.72;
const SHEEN = 0.2;
/** How far toward the light, up and to the left, body and sheen sit on the thread. */
const LIT = 0.07;
/** How far thread casts its shadow on the cloth, in widths. */
const CAST = 0.22;

/**
 * Runs of thread as they lie: a soft shadow on what is below, then piece after piece in the order sewn, each with its
 * shaded edge, body and sheen, so that later thread visibly lies over earlier.
 */
export function threadPicture(runs: Runs, hex: string, width: number): string {
  const edge = shadowSide(hex);
  const core = body(hex);
  const top = sheen(hex);
  const parts: string[] = [];
  for (let r = 0; r + 1 < runs.start.length; r++) {
    const [from, to] = [runs.start[r], runs.start[r + 1]];
    if (to - from < 2) continue;
    const line = (aside: number, a: number, b: number) =>
      pathData((pen) => traceLine(shifted(pen, aside, aside), runs.xy, a, b));
    parts.push(
      element('path', {
        stroke: '#1b1410',
        'stroke-opacity': 0.28,
        'stroke-width': width * 1.15,
        d: line(width * CAST, from, to),
      }),
    );
    const cuts = sewnPieces(runs.xy, from, to);
    for (let c = 0; c + 1 < cuts.length; c++) {
      const [a, b] = [cuts[c], cuts[c + 1] + 1];
      const lit = -LIT * width;
      parts.push(
        element('path', { stroke: edge, 'stroke-width': width, d: line(0, a, b) }),
        element('path', { stroke: core, 'stroke-width': width * BODY, d: line(lit, a, b) }),
        element('path', { stroke: top, 'stroke-width': width * SHEEN, d: line(2 * lit, a, b) }),
      );
    }
  }
  return parts.join('');
}

/** Attributes of a group that holds thread. */
export const threadGroup = { fill: 'none', 'stroke-linecap': 'round', 'stroke-linejoin': 'round' } as const;
