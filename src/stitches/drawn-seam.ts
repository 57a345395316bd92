import type { FigureElement, FigureLine } from '../formats/svg-figure.js';
import { distance, type Point } from '../geometry/point.js';
import { InputError } from '../input-error.js';

/** The frame along the seam of a drawing: u from where the repeat begins, v to the left hand, mm. */
export interface SeamFrame {
  readonly length: number;
  toSeam(p: Point): Point;
}

const SEAM = 'seam';
/** A seam shorter than this is a slip of the hand, mm. */
const SHORTEST_SEAM = 1;

/** Whether an element is marked as the seam. */
export const isSeam = ({ attributes }: FigureElement): boolean => namesOf(attributes).includes(SEAM);

/** Whether an element seems to be meant as the seam, and is not marked so: `Seam`, `seam-1`. */
const isNearlySeam = ({ attributes }: FigureElement): boolean =>
  namesOf(attributes).some((name) => /^seam(\W|_|\d|$)/i.test(name));

const namesOf = ({ id = '', class: classes = '' }: Readonly<Record<string, string>>): string[] => [
  id,
  ...classes.split(/\s+/),
];

/**
 * The frame that the seam of a drawing gives; what is wrong with it is added to `mistakes`, and there is none then.
 * @param elements groups and what is not read: none of them can be the seam, but one may be marked as it
 */
export function seamFrame(
  lines: readonly FigureLine[],
  elements: readonly FigureElement[],
  where: string,
  mistakes: InputError[],
): SeamFrame | null {
  const seams = lines.filter(isSeam);
  const right = 'give one straight line the id "seam": it shows where the repeat begins and ends';
  if (seams.length === 0) {
    const near = [...lines, ...elements].find((one) => isSeam(one) || isNearlySeam(one));
    if (!near) {
      mistakes.push(new InputError('no-seam-line', where, 'no line is marked as the seam', right));
      return null;
    }
    const { id, class: classes } = near.attributes;
    const said = isSeam(near) ? `a ${near.name} is marked as it` : `"${id ?? classes}" is not "seam"`;
    mistakes.push(
      new InputError('no-seam-line', near.where, `no line is marked as the seam, and ${said}`, right),
    );
    return null;
  }
  if (seams.length > 1) {
    for (const seam of seams) {
      const wrong = `${seams.length} lines are marked as the seam, and this is one of them`;
      mistakes.push(new InputError('no-seam-line', seam.where, wrong, right));
    }
    return null;
  }
  return frameAlong(seams[0], mistakes);
}

function frameAlong({ line, where }: FigureLine, mistakes: InputError[]): SeamFrame | null {
  const [piece, ...more] = line.pieces;
  if (!piece || more.length || piece.kind !== 'straight') {
    const wrong = 'the seam is no single straight line';
    mistakes.push(new InputError('crooked-seam', where, wrong, 'draw it straight, one repeat long'));
    return null;
  }
  const { start } = line;
  const length = distance(start, piece.to);
  if (length < SHORTEST_SEAM) {
    const wrong = `the seam is ${length.toFixed(2)} mm long`;
    mistakes.push(new InputError('short-seam', where, wrong, `at least ${SHORTEST_SEAM} mm, one repeat`));
    return null;
  }
  const [tx, ty] = [(piece.to[0] - start[0]) / length, (piece.to[1] - start[1]) / length];
  return {
    length,
    toSeam: ([x, y]) => {
      const [dx, dy] = [x - start[0], y - start[1]];
      return [dx * tx + dy * ty, dx * ty - dy * tx];
    },
  };
}
