import type { Attributes } from '../svg.js';

/**
 * Colors that eyes of every kind tell apart (Okabe and Ito, "Color Universal Design", 2002; its yellow is too pale on white,
 * the values from memory).
 */
const COLORS = ['#0072b2', '#d55e00', '#009e73', '#000000', '#cc79a7', '#e69f00', '#56b4e9'];
/** Solid, dashed, dotted, long and short, loose. */
const DASHES = [undefined, '2 0.9', '0.01 0.9', '3.2 0.9 0.01 0.9', '0.9 0.9'];
const WIDE = [0.45, 0.55, 0.6, 0.5, 0.7];

/**
 * How the lines of a color stop are drawn, from 0. Neighbors in the order of sewing differ in both color and dashes, and no
 * two of 35 stops look alike.
 */
export const stopLook = (stop: number): Attributes => ({
  stroke: COLORS[stop % COLORS.length],
  'stroke-width': WIDE[stop % DASHES.length],
  'stroke-dasharray': DASHES[stop % DASHES.length],
});

export const stopColor = (stop: number): string => COLORS[stop % COLORS.length];
