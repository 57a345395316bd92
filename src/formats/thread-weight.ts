/** How makers write the ticket number of a thread: "No. 40", "no 40", "40" or "40 wt". */
export const WEIGHT_PATTERN = '^ *([Nn][Oo]\\.? *)?[1-9][0-9]{0,2}( *wt)? *$';

const pattern = new RegExp(WEIGHT_PATTERN);

/** The ticket number of a thread, which falls as threads get thicker; null where a weight cannot be read. */
export function ticketOf(weight: string): number | null {
  return pattern.test(weight) ? Number(/\d+/.exec(weight)![0]) : null;
}
