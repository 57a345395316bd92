import type { SeamFit } from '../../src/fit/fit.js';
import { boxOf } from '../../src/geometry/box.js';
import { cumulativeLength, type Points } from '../../src/geometry/polyline.js';
import { pointAtLength } from '../../src/geometry/polyline-part.js';
import type { Picture } from './messages.js';

type Place = readonly [number, number];

/** Of each accent of a line the figure that lies nearest to the line's middle, sewn or put on by hand. @param points of the line */
export function accentPlaces({ seam, layers, marks }: SeamFit, points: Points): Picture['accents'] {
  const at = cumulativeLength(points);
  const [mx, my] = pointAtLength(points, at, at[at.length - 1] / 2);
  const figures = [
    ...layers.flatMap(({ kind, index, thread, chains }) =>
      kind === 'accent' && thread === 0 ? chains.map(({ path }) => ({ index, at: middleOf(path) })) : [],
    ),
    ...marks,
  ];
  const off = ([x, y]: Place) => Math.hypot(x - mx, y - my);
  const nearest = new Map<number, Place>();
  for (const { index, at: place } of figures) {
    const known = nearest.get(index);
    if (!known || off(place) < off(known)) nearest.set(index, place);
  }
  return [...nearest].sort(([a], [b]) => a - b).map(([nth, place]) => ({ line: seam, nth, at: place }));
}

function middleOf(path: Points): Place {
  const { left, right, top, bottom } = boxOf([path]);
  return [(left + right) / 2, (top + bottom) / 2];
}
