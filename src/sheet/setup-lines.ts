import type { Thread } from '../design/design.js';
import { ticketOf } from '../formats/thread-weight.js';
import type { DressReport } from '../report/dress-report.js';

/** A line that the maker fills in by hand, and what is usual. */
export interface SetupLine {
  readonly label: string;
  readonly usual: string;
}

/** What is written down before the first stitch. Suggestions are common practice, from memory. */
export function setupLines({ stops, totals }: DressReport): SetupLine[] {
  const threads = stops.flatMap(({ thread }) => (thread ? [thread] : []));
  return [
    { label: 'Needle', usual: needleFor(threads) },
    {
      label: 'Bobbin',
      usual: `fine bobbin thread, ${totals.bobbinM.toFixed(1)} m for all of it; white, or near the cloth`,
    },
    { label: 'Stabilizer', usual: 'medium cut-away; tear-away under a foundation that stays in' },
    {
      label: 'Topping',
      usual: 'film that dissolves in water on velvet and other pile; none on smooth cloth',
    },
  ];
}

/** Needles by the heaviest thread, in numbers of the metric and the older system. */
const NEEDLES = [
  { ticket: 12, usual: '100/16, with a large eye' },
  { ticket: 30, usual: '90/14' },
  { ticket: 40, usual: '75/11' },
] as const;

function needleFor(threads: readonly Thread[]): string {
  if (threads.some(({ finish }) => /metallic/i.test(finish ?? ''))) return '90/14 for metallic thread';
  const heaviest = Math.min(...threads.map(({ weight }) => ticketOf(weight) ?? 40), 60);
  const known = NEEDLES.find(({ ticket }) => heaviest <= ticket);
  const size = known?.usual ?? '65/9 or 70/10';
  return `embroidery needle ${size}${threads.length ? ` for No. ${heaviest}` : ''}`;
}
