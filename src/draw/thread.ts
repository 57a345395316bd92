import type { Runs } from '../needle/run.js';
import { traceLine } from './pen.js';
import { type Coat, castCoat, strandsOf, threadCoats } from './strands.js';
import { element } from './svg.js';
import { laidAside, relativeLine } from './svg-pen.js';

/**
 * Runs of thread as they lie: a soft shadow on what is below, then piece after piece in the order sewn, each with its
 * shaded edge, body and sheen, so that later thread visibly lies over earlier. Every stitch is written out once.
 */
export function threadPicture(sewn: Runs, hex: string, width: number): string {
  const { xy, cuts: runs } = strandsOf(sewn);
  const coats = threadCoats(hex, width).map((coat) => ({ look: look(coat), aside: coat.aside }));
  const { opacity, ...cast } = castCoat(width);
  const shadow = { stroke: cast.color, 'stroke-opacity': opacity, 'stroke-width': cast.width };
  const parts: string[] = [];
  for (const cuts of runs) {
    const pieces = cuts.slice(1).map((end, i) => relativeLine((pen) => traceLine(pen, xy, cuts[i], end + 1)));
    const whole = { ...pieces[0], moves: pieces.map((piece) => piece.moves).join('') };
    parts.push(element('path', { ...shadow, d: laidAside(whole, cast.aside) }));
    for (const piece of pieces) {
      for (const coat of coats)
        parts.push(element('path', { ...coat.look, d: laidAside(piece, coat.aside) }));
    }
  }
  return parts.join('');
}

const look = ({ color, width }: Coat) => ({ stroke: color, 'stroke-width': width });

/** Attributes of a group that holds thread. */
export const threadGroup = { fill: 'none', 'stroke-linecap': 'round', 'stroke-linejoin': 'round' } as const;
