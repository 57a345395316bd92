import type { Unit } from '../stitches/stitch.js';
import { figuresAlone, sizeOf } from './alone.js';

/** A figure by itself, which no neighbor crowds, may be so much shorter than the part of a repeat that it is. */
const SHARES = [0.85, 0.7, 0.6, 0.5];
/** Curves are pressed no further than to this share. */
const LEAST_CURVED = 0.65;
/** No slim figure is shorter along its line, mm: below that its strokes lie on each other. */
const SHORTEST = 2.4;

/**
 * Figures of a unit that stand by themselves, for less room along the line than any of them takes as it is: their strokes
 * stand more upright, the stoutest first. What is round, keeps its shape or is satin is not pressed.
 */
export function* slimFigures(unit: Unit, glide: boolean, room: number): Generator<Unit> {
  for (const share of SHARES) {
    for (const figure of figuresAlone(unit, glide, room / share)) {
      const slim = isRound(figure, share) ? null : slimmer(figure, share);
      if (slim && sizeOf(slim).along >= SHORTEST) yield slim;
    }
  }
}

const isRound = ({ legs }: Unit, share: number): boolean =>
  legs.some(
    ({ kind, bends }) =>
      !bends ||
      kind === 'loop' ||
      kind === 'petal' ||
      kind === 'cord' ||
      (kind === 'curve' && share < LEAST_CURVED),
  );

function slimmer(figure: Unit, share: number): Unit {
  const pressed = (uv: Float64Array) => uv.map((value, i) => (i % 2 === 0 ? share * value : value));
  const legs = figure.legs.map((leg) => ({ ...leg, path: pressed(leg.path) }));
  return { ...figure, nodes: pressed(figure.nodes), legs };
}
