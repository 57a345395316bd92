import type { Dressed } from '../dress.js';
import type { Box } from '../geometry/box.js';
import { InputError } from '../input-error.js';
import { MARGIN } from './flow.js';
import { type HoopPlan, shownBox } from './hoop-plan.js';
import { lying, PAPER_NAMES, PAPERS, type PaperName, type Size } from './page-sizes.js';

/** How the picture lies on its page. */
export interface PictureLayout {
  readonly page: Size;
  /** 1 at actual size */
  readonly scale: number;
  /** the picture takes the whole page, its sums stand on the next one */
  readonly tight: boolean;
  /** without a field where that is larger than the page, and the work is not */
  readonly plan: HoopPlan;
}

/** A picture at actual size or not at all, or smaller where it has to be. */
export type PictureSize = 'actual' | 'smaller';

/** What stands above and below the picture, mm: title, sums and the mark of the upper edge; caption and check bars. */
export const ABOVE = 30;
export const BELOW = 20;
/** The same on a page that the picture takes alone; its margin is what printers leave blank (common practice). */
export const TIGHT = { above: 12, below: 25, margin: 5 } as const;

/**
 * The page that shows a picture at actual size, upright if it can be, with its field if that fits. Where none does, the
 * one that shows it largest.
 *
 * @throws InputError when the work is larger than the page, and it is to be shown at actual size or is in no sewing field
 */
export function pictureLayout(
  { field }: Pick<Dressed, 'field'>,
  plan: HoopPlan,
  paper: PaperName,
  asked: PictureSize | undefined,
): PictureLayout {
  const upright = PAPERS[paper];
  const plans = plan.field ? [plan, { ...plan, field: null }] : [plan];
  const layouts = plans.flatMap((one) =>
    [false, true].flatMap((tight) => [upright, lying(upright)].map((page) => layoutOn(page, one, tight))),
  );
  const actual = layouts.find(({ scale }) => scale === 1);
  if (actual) return actual;
  if (asked === 'actual' || (asked === undefined && !plan.field))
    throw tooLarge(field, upright, paper, asked);
  return layouts
    .filter((layout) => layout.plan === plan)
    .reduce((best, layout) => (layout.scale > best.scale ? layout : best));
}

function layoutOn(page: Size, plan: HoopPlan, tight: boolean): PictureLayout {
  const { width, height } = sizeOf(shownBox(plan));
  const margin = tight ? TIGHT.margin : MARGIN;
  const room = {
    width: page.width - 2 * margin,
    height: page.height - (tight ? TIGHT.above + TIGHT.below : 2 * MARGIN + ABOVE + BELOW),
  };
  const most = Math.min(room.width / width, room.height / height);
  // a whole number of hundredths is easy to reckon with
  const scale = most >= 1 - 1e-9 ? 1 : Math.floor(most * 100) / 100 || most;
  return { page, plan, tight, scale };
}

/** 'at actual size', or how much smaller. */
export const scaleText = (scale: number): string =>
  scale === 1 ? 'at actual size' : `at ${Math.round(scale * 1e4) / 100} % of its size`;

export const sizeOf = ({ left, top, right, bottom }: Box): Size => ({
  width: right - left,
  height: bottom - top,
});

function tooLarge(work: Size, { width, height }: Size, paper: PaperName, asked?: PictureSize): InputError {
  const size = `${work.width.toFixed(1)} x ${work.height.toFixed(1)} mm`;
  const smaller = '--picture smaller draws it smaller and says how much';
  return new InputError(
    'larger-than-paper',
    'sheet',
    `the block with its stitches is ${size}, for which ${PAPER_NAMES[paper]} (${width} x ${height} mm)${
      asked ? '' : ' and the common sewing fields'
    } ${asked ? 'has' : 'have'} no room`,
    asked ? smaller : `${smaller}, or name the sewing field that takes it with --hoop`,
  );
}
