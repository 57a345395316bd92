import type { Runs } from '../needle/run.js';
import { bundled } from './bundles.js';
import { traceLine } from './pen.js';
import { sewnPieces } from './pieces.js';
import { body, shadowSide, sheen } from './shade.js';
import { element } from './svg.js';
import { laidAside, relativeLine } from './svg-pen.js';

/** How thread shares its width between the shaded edge, the lit body and the sheen. */
const BODY = 0.72;
const SHEEN = 0.2;
/** How far toward the light, up and to the left, body and sheen sit on the thread, in widths. */
const LIT = 0.07;
/** How far thread casts its shadow on the cloth, in widths. */
const CAST = 0.22;

/**
 * Runs of thread as they lie: a soft shadow on what is below, then piece after piece in the order sewn, each with its
 * shaded edge, body and sheen, so that later thread visibly lies over earlier. Every stitch is written out once.
 */
export function threadPicture(sewn: Runs, hex: string, width: number): string {
  const runs = bundled(sewn);
  const edge = { stroke: shadowSide(hex), 'stroke-width': width };
  const core = { stroke: body(hex), 'stroke-width': width * BODY };
  const top = { stroke: sheen(hex), 'stroke-width': width * SHEEN };
  const cast = { stroke: '#1b1410', 'stroke-opacity': 0.28, 'stroke-width': width * 1.15 };
  const parts: string[] = [];
  for (let r = 0; r + 1 < runs.start.length; r++) {
    const [from, to] = [runs.start[r], runs.start[r + 1]];
    if (to - from < 2) continue;
    const cuts = sewnPieces(runs.xy, from, to);
    const pieces = cuts
      .slice(1)
      .map((end, i) => relativeLine((pen) => traceLine(pen, runs.xy, cuts[i], end + 1)));
    const whole = { ...pieces[0], moves: pieces.map((piece) => piece.moves).join('') };
    parts.push(element('path', { ...cast, d: laidAside(whole, CAST * width) }));
    for (const piece of pieces) {
      parts.push(
        element('path', { ...edge, d: laidAside(piece, 0) }),
        element('path', { ...core, d: laidAside(piece, -LIT * width) }),
        element('path', { ...top, d: laidAside(piece, -2 * LIT * width) }),
      );
    }
  }
  return parts.join('');
}

/** Attributes of a group that holds thread. */
export const threadGroup = { fill: 'none', 'stroke-linecap': 'round', 'stroke-linejoin': 'round' } as const;
