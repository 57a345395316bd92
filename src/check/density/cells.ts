/** Cells on which holes are counted, and how far from a stitch cloth counts as sewn on, mm. */
export const COARSE = 0.25;
/** Holes are counted within this of a place, and cloth this near to a stitch counts as sewn on; mm. */
export const AROUND = 1;
/** Cells in which the share of cloth under thread is measured, and how deep it lies, mm. */
export const COVER = 1;
/**
 * Thread is measured on finer cells: so many side by side in a mm, and rows in a mm. On cells of 0.1 mm the edges of threads
 * along them add up to errors of a tenth; on these, 99 % of the mm2 err by less than 3 hundredths. Threads are whole rows
 * wide, so that one along the rows is as wide as it should be.
 */
export const COVER_COLUMNS = 32;
export const COVER_ROWS = 20;
export const COVER_CELL = 1 / (COVER_COLUMNS * COVER_ROWS);
/** What one piercing around a place comes to, holes for each mm2. */
export const HOLE = 1 / (Math.PI * AROUND ** 2);
/** Work is measured tile by tile, mm: small enough for counting to be quick, in whole cells of every size. */
export const TILE = 20;
/** Coarse cells along the side of a tile. */
export const COARSE_CELLS = Math.round(TILE / COARSE);
