/** How long something takes, for people. */
export function minutes(count: number): string {
  const whole = Math.max(1, Math.round(count));
  return whole < 60 ? `${whole} min` : `${Math.floor(whole / 60)} h ${whole % 60} min`;
}

export const plural = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

/** "14 repeats of 7.1 mm" */
export const repeatsOf = (repeats: number, length: string): string =>
  `${repeats} ${repeats === 1 ? 'repeat' : 'repeats'} of ${length}`;

export const lineTitle = (line: number | 'outline'): string => (line === 'outline' ? 'Edge' : `Seam ${line}`);
