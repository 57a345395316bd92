import type { Finding } from '../finding.js';
import {
  type Dressing,
  HAND_THREADS,
  type HandThread,
  type Row,
  type Weighted,
} from '../formats/dressing.js';
import {
  asHeavyAs,
  type Heaviness,
  handThreadTitle,
  handThreadWidth,
  inPasses,
  isLike,
} from '../needle/heaviness.js';
import { type Threaded, threadOf } from './threads.js';

type Figure = Weighted & Threaded;
type Threads = Pick<Dressing, 'threads'>;

/** How often a figure's visible legs are sewn; what is to be as heavy as a hand's thread goes by the figure's first thread. */
export const passesIn = ({ threads }: Threads, { passes, heavy, thread }: Figure): number =>
  heavy === undefined ? passes! : asHeavyAs(heavy, threads[thread].weight).passes;

/** How far apart the passes of a figure's nth thread lie, mm; undefined where they lie as usual. */
export const spreadIn = (dressing: Threads, figure: Figure, nth: number): number | undefined =>
  figure.heavy === undefined ? undefined : heavinessIn(dressing, figure, figure.heavy, nth).spread;

const heavinessIn = (dressing: Threads, figure: Figure, heavy: HandThread, nth: number): Heaviness =>
  inPasses(heavy, threadOf(dressing, figure, nth).weight, passesIn(dressing, figure));

/** Rows in another weight. */
export const rowsWeighing = (rows: readonly Row[], weight: Weighted): Row[] =>
  rows.map(({ passes: _, heavy: __, ...row }) => ({ ...row, ...weight }));

/** The dressing with all its rows as heavy as a hand's thread; its accents and ornaments are as they were. */
export const withHeavyRows = (dressing: Dressing, heavy: HandThread): Dressing => ({
  ...dressing,
  treatments: dressing.treatments.map((treatment) => ({
    ...treatment,
    rows: rowsWeighing(treatment.rows, { heavy }),
  })),
});

/** How each hand's thread that is asked for is sewn in the threads in use, and which of these cannot look like it. */
export function heavinessFindings(dressing: Dressing): Finding[] {
  const figures: readonly Figure[] = [
    ...dressing.treatments.flatMap(({ rows, accents = [] }) => [...rows, ...accents]),
    ...(dressing.ornaments ?? []),
  ];
  const told = new Map<HandThread, Map<string, Heaviness>>(HAND_THREADS.map((hand) => [hand, new Map()]));
  for (const figure of figures) {
    if (figure.heavy === undefined) continue;
    for (let nth = 0; nth <= (figure.moreThreads?.length ?? 0); nth++) {
      const { weight } = threadOf(dressing, figure, nth);
      told.get(figure.heavy)!.set(weight, heavinessIn(dressing, figure, figure.heavy, nth));
    }
  }
  return [...told].flatMap(([hand, byWeight]) =>
    [...byWeight].map(([weight, heaviness]) =>
      isLike(hand, heaviness) ? sewnAs(hand, weight, heaviness) : unlike(hand, weight, heaviness),
    ),
  );
}

const sewnAs = (hand: HandThread, weight: string, { passes, width }: Heaviness): Finding => ({
  level: 'note',
  code: 'as-heavy-as',
  message: `as heavy as ${handThreadTitle(hand)} (${mm(handThreadWidth(hand))}): ${counted(passes)} of ${weight}, ${mm(width)} wide`,
});

function unlike(hand: HandThread, weight: string, { passes, width }: Heaviness): Finding {
  const wanted = handThreadWidth(hand);
  const remedy = width > wanted ? 'a finer thread' : 'a heavier thread';
  return {
    level: 'warning',
    code: 'not-as-heavy',
    message: `${weight} cannot be as heavy as ${handThreadTitle(hand)} (${mm(wanted)}): ${counted(passes)} of it ${passes === 1 ? 'lies' : 'lie'} ${mm(width)} wide; ${remedy} would do`,
  };
}

const mm = (length: number): string => `${length.toFixed(2)} mm`;
const counted = (passes: number): string => (passes === 1 ? 'one pass' : `${passes} passes`);
