import type { Field } from '../check/hoop.js';
import { fitIn, smallestField } from '../check/hoops.js';
import { extentsOf } from '../design/extents.js';
import { pictureFrame } from '../draw/dressed-picture.js';
import type { Dressed } from '../dress.js';
import type { Box } from '../geometry/box.js';
import { STEPS_PER_MM } from '../geometry/units.js';

/** Where everything of the picture lies, in the block's frame, mm. */
export interface HoopPlan {
  /** the sewing field as it lies about the block; null where no field is known that takes it */
  readonly field: Box | null;
  /** of the block and all that is sewn */
  readonly work: Box;
  /** the middle of the file's extents, by which many machines center a design (common practice) */
  readonly middle: readonly [number, number];
  /** where the file begins */
  readonly start: readonly [number, number];
}

/** How a block with all that is sewn on it lies in its sewing field, or in the smallest common one that takes it. */
export function hoopPlan({ block, design, dressing, field: size }: Dressed): HoopPlan {
  const { left, right, below, above } = extentsOf(design);
  const [ox, oy] = design.origin;
  const middle = [(left + right) / 2 / STEPS_PER_MM - ox, -(below + above) / 2 / STEPS_PER_MM - oy] as const;
  return {
    field: fieldAround(middle, dressing.hoop ?? smallestField(size), size),
    work: pictureFrame(block, design),
    middle,
    start: [0 - ox, 0 - oy],
  };
}

function fieldAround([x, y]: readonly [number, number], hoop: Field | null, size: Field): Box | null {
  if (!hoop) return null;
  const { fits, turned } = fitIn(hoop, size);
  if (!fits) return null;
  const [across, down] = turned ? [hoop.height, hoop.width] : [hoop.width, hoop.height];
  return { left: x - across / 2, top: y - down / 2, right: x + across / 2, bottom: y + down / 2 };
}

/** What a picture has to show: the work, and its field where there is one. */
export const shownBox = ({ field, work }: HoopPlan): Box =>
  field
    ? {
        left: Math.min(field.left, work.left),
        top: Math.min(field.top, work.top),
        right: Math.max(field.right, work.right),
        bottom: Math.max(field.bottom, work.bottom),
      }
    : work;
