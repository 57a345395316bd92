import type { BrokenTuck } from '../design/order.js';
import { type Finding, lineName } from '../finding.js';

/** An end that stops short because treatments lie under each other in a ring, so that one of them cannot. */
export function ringOfTucks({ seam, under }: BrokenTuck): Finding {
  return {
    level: 'note',
    code: 'ring-of-tucks',
    message:
      `treatments tuck under each other in a ring, so the one on ${lineName(seam)} stops short of ${lineName(under)}; ` +
      'naming another seam that runs through a junction would open the ring',
    seam,
  };
}
