/** Width in mm at which sewn thread of each ticket number lies on the cloth (common practice). */
const laid: Readonly<Record<string, number>> = {
  'No. 60': 0.25,
  'No. 40': 0.4,
  'No. 30': 0.45,
  'No. 12': 0.65,
};

/** Laid width of a thread, mm; an unknown ticket number is drawn as No. 40. */
export const threadWidth = (weight: string): number => laid[weight] ?? laid['No. 40'];
