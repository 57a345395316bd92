/** CSS pixels in each unit of length (CSS Values and Units Module Level 3, "absolute lengths"). */
const PX: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  mm: 96 / 25.4,
  cm: 96 / 2.54,
  q: 96 / 101.6,
  in: 96,
  pt: 96 / 72,
  pc: 16,
};

const LENGTH = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?)\s*(px|mm|cm|q|in|pt|pc|%)?$/i;

/**
 * A length attribute in user units (pixels), or null when it is no length at all or in a unit without a fixed size.
 *
 * @param whole what 100 % stands for
 */
export function readLength(text: string, whole: number): number | null {
  const found = LENGTH.exec(text.trim());
  if (!found) return null;
  const value = Number(found[1]);
  const unit = (found[2] ?? '').toLowerCase();
  return unit === '%' ? (value / 100) * whole : value * PX[unit];
}

export const isPercentage = (text: string): boolean => text.trim().endsWith('%');
