import { STEEPEST_GUIDE } from '../../src/formats/dressing.js';

/** What a guide line can be, mm: as the dressing takes it, up to what is seen on a block. */
const HIGHEST = 30;
export const GUIDE_LENGTHS = { min: 4, max: 120, step: 1 };
export const GUIDE_HEIGHTS = {
  min: 0.5,
  max: Math.min(HIGHEST, STEEPEST_GUIDE * GUIDE_LENGTHS.max),
  step: 0.5,
};
