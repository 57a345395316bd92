import type { Thread } from '../design/design.js';
import { ticketOf } from '../formats/thread-weight.js';
import type { DressReport } from '../report/dress-report.js';

/** A line that the maker fills in by hand, and what is usual. */
export interface SetupLine {
  readonly label: string;
  readonly usual: string;
}

/** What a block sews that names no thread. */
const ANY: Thread = { name: '', hex: '#000000', weight: 'No. 40' };

/** What is written down before the first stitch. Suggestions are common practice, from memory. */
export function setupLines({ stops, totals }: DressReport): SetupLine[] {
  const threads = stops.flatMap(({ thread }) => (thread ? [thread] : []));
  return [
    { label: 'Needle', usual: needlesFor(threads.length ? threads : [ANY]) },
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

/** Needles for threads from a ticket number on, in numbers of the metric and the older system, the finest first. */
const NEEDLES = [
  { from: 50, needle: '65/9 or 70/10' },
  { from: 35, needle: '75/11' },
  { from: 20, needle: '90/14' },
  { from: 0, needle: '100/16 with a large eye' },
] as const;
const FOR_METALLIC = '90/14 for metallic thread';
/** What a weight counts as that cannot be read. */
const USUAL = 40;

/** A needle for each kind of thread in use: '75/11 for No. 40; 100/16 with a large eye for No. 12'. */
function needlesFor(threads: readonly Thread[]): string {
  const isMetallic = ({ finish }: Thread) => /metallic/i.test(finish ?? '');
  const others = threads.filter((thread) => !isMetallic(thread));
  const tickets = [...new Set(others.map(({ weight }) => ticketOf(weight) ?? USUAL))].sort((a, b) => b - a);
  const needles = NEEDLES.flatMap((one) => {
    const own = tickets.filter((ticket) => NEEDLES.find(({ from }) => ticket >= from) === one);
    return own.length ? [`${one.needle} for ${own.map((ticket) => `No.\u00a0${ticket}`).join(', ')}`] : [];
  });
  return [...needles, ...(threads.some(isMetallic) ? [FOR_METALLIC] : [])].join('; ');
}
