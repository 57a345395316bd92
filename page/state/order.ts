import type { Dressing } from '../../src/formats/dressing.js';
import type { Line } from '../core/messages.js';
import { withOrder } from './edits.js';

interface Sewn {
  readonly kind: string;
  readonly seams: readonly Line[];
}

/** Whether a stop can be sewn earlier or later: it is of one line, which the others of that line go with. */
export const isMovable = ({ kind, seams }: Sewn): boolean =>
  (kind === 'treatment' || kind === 'edge') && seams.length === 1;

/** The dressing with the line of one stop sewn where another stop is now. */
export function withMoved(dressing: Dressing, stops: readonly Sewn[], from: number, to: number): Dressing {
  if (from === to || !stops[to] || !isMovable(stops[from])) return dressing;
  const [line] = stops[from].seams;
  const others = (part: readonly Sewn[]) => linesIn(part).filter((one) => one !== line);
  const ahead = others(from < to ? stops.slice(0, to + 1) : stops.slice(0, to));
  const behind = others(stops).filter((one) => !ahead.includes(one));
  return withOrder(dressing, [...ahead, line, ...behind]);
}

/** Lines in the order of their first stops. */
const linesIn = (stops: readonly Sewn[]): Line[] => [
  ...new Set(stops.filter(isMovable).flatMap(({ seams }) => seams)),
];
