import type { BrokenTuck } from '../design/order.js';
import { type Finding, lineName } from '../finding.js';
import type { Dressing } from '../formats/dressing.js';
import { InputError } from '../input-error.js';

/**
 * The treatments that a dressing wants sewn in its own order, as indices.
 * @throws InputError when it names a seam without a treatment, or one twice
 */
export function treatmentsInOrder({ order = [], treatments }: Dressing): number[] {
  const place = new Map(treatments.map(({ seam }, t) => [seam.id, t]));
  return order.map((id, k) => {
    const treatment = place.get(id);
    const wrong = treatment === undefined ? 'has no treatment' : 'is named twice';
    if (treatment !== undefined && order.indexOf(id) === k) return treatment;
    throw new InputError('bad-order', `order: ${lineName(id)}`, wrong, 'name each dressed seam once', [
      'order',
      k,
    ]);
  });
}

/** An end that stops short because the maker's order sews it after what it would tuck under. */
export function shortByOrder({ seam, under }: BrokenTuck): Finding {
  return {
    level: 'note',
    code: 'short-by-order',
    message: `by the order asked for, the treatment on ${lineName(seam)} is sewn after the one on ${lineName(under)}, so it stops short of it instead of running in under it`,
    seam,
  };
}
