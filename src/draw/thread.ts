import type { Runs } from '../needle/run.js';
import { traceLine } from './pen.js';
import { castCoat, strandsOf, threadCoats } from './strands.js';
import { pathsOf } from './svg.js';
import { laidAside, relativeLine } from './svg-pen.js';

/**
 * Runs of thread as they lie: a soft shadow on what is below, then piece after piece in the order sewn, each with its
 * shaded edge, body and sheen, so that later thread visibly lies over earlier. Every stitch is written out once.
 */
export function threadPicture(sewn: Runs, hex: string, width: number): string {
  const { xy, cuts: runs } = strandsOf(sewn);
  const coats = threadCoats(hex, width).map(({ color, width, aside }) => ({
    path: pathsOf({ stroke: color, 'stroke-width': width }),
    aside,
  }));
  const cast = castCoat(width);
  const shadow = pathsOf({
    stroke: cast.color,
    'stroke-opacity': cast.opacity,
    'stroke-width': cast.width,
  });
  const parts: string[] = [];
  for (const cuts of runs) {
    const pieces = cuts.slice(1).map((end, i) => relativeLine((pen) => traceLine(pen, xy, cuts[i], end + 1)));
    const whole = { ...pieces[0], moves: pieces.map((piece) => piece.moves).join('') };
    parts.push(shadow(laidAside(whole, cast.aside)));
    for (const piece of pieces) {
      for (const { path, aside } of coats) parts.push(path(laidAside(piece, aside)));
    }
  }
  return parts.join('');
}

/** Attributes of a group that holds thread. */
export const threadGroup = { fill: 'none', 'stroke-linecap': 'round', 'stroke-linejoin': 'round' } as const;
