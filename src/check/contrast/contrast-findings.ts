import { lineList, numberRanges } from '../../block/line-list.js';
import type { LineId } from '../../block/meetings.js';
import { meetingPoint } from '../../block/meetings.js';
import type { SeamMap } from '../../block/seam-map.js';
import { CLEAR, contrast, SEEN } from '../../color/contrast.js';
import type { Finding } from '../../finding.js';
import type { ThreadChoice } from '../../formats/dressing.js';
import { cumulativeLength } from '../../geometry/polyline.js';
import { pointAtLength } from '../../geometry/polyline-part.js';
import {
  bestContrast,
  type ContrastLook,
  fabricOfPatch,
  type Meeting,
  type SewnThread,
  type ThreadContrast,
} from './thread-contrast.js';

/** Threads nearer than this by CIEDE2000 pass for one another at arm's length. Our own choice. */
export const ALIKE = 6;

interface Shown {
  readonly sewn: SewnThread;
  readonly contrast: ThreadContrast;
}

/** What is worth a look of threads on their fabrics and beside each other: one finding for each cause. */
export function contrastFindings(map: SeamMap, look: ContrastLook): Finding[] {
  const shown = look.contrasts.map((one): Shown => ({ sewn: look.threads[one.of], contrast: one }));
  const by = (verdict: ThreadContrast['shows']) => [
    ...groupBy(
      shown.filter(({ contrast }) => contrast.shows === verdict),
      nameOf,
    ).values(),
  ];
  return [
    ...by('lost').map((group) => lost(map, group)),
    ...by('visible').map((group) => faint(map, group)),
    ...thinOnPrint(
      map,
      shown.filter(({ contrast }) => contrast.isThinOnPrint),
    ),
    ...lookAlike(map, look.meetings),
    ...hardlyTwo(map, look.meetings),
  ];
}

const nameOf = ({ sewn: { thread } }: Shown): string => threadName(thread);
const threadName = ({ name, hex }: ThreadChoice): string => name || hex;

function groupBy<T>(list: readonly T[], key: (one: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const one of list) groups.set(key(one), [...(groups.get(key(one)) ?? []), one]);
  return groups;
}

function lost(map: SeamMap, group: readonly Shown[]): Finding {
  const [low, high] = range(group);
  return {
    level: 'warning',
    code: 'thread-lost',
    message: `${nameOf(group[0])} is hardly to be seen ${along(group)} ${where(group)}: contrast ${span(low, high)}, visible from ${SEEN}; ${better(map, group)}`,
    ...place(map, group),
  };
}

function faint(map: SeamMap, group: readonly Shown[]): Finding {
  const [low, high] = range(group);
  return {
    level: 'note',
    code: 'thread-faint',
    message: `${nameOf(group[0])} is to be seen, but not clear, on the fabrics of ${where(group)}: contrast ${span(low, high)}, clear from ${CLEAR}; ${better(map, group)}`,
    ...place(map, group),
  };
}

const along = (group: readonly Shown[]): string =>
  group.every(({ contrast: { places } }) => places.some((place) => bestContrast(place) >= SEEN))
    ? 'along parts of'
    : 'on the fabrics of';

/** The contrasts of the worst places, from the least to the greatest. */
function range(group: readonly Shown[]): readonly [number, number] {
  const worst = group.map(({ contrast: { places } }) => Math.min(...places.map(bestContrast)));
  return [Math.min(...worst), Math.max(...worst)];
}

/** Contrasts in words: '1.4', '1.4 to 2.3'. */
export const span = (low: number, high: number): string => {
  // cut off, so that what is below a limit never reads as if it were on it
  const [a, b] = [low, high].map((ratio) => (Math.floor(10 * ratio) / 10).toFixed(1));
  return a === b ? a : `${a} to ${b}`;
};

const linesOf = (group: readonly Shown[]): LineId[] => [
  ...new Set(group.flatMap(({ sewn: { line } }) => (line === null ? [] : [line]))),
];

/** A figure that is worked twice in one thread, as petals and heart, is one all the same. */
const ornamentsIn = (group: readonly Shown[]): number =>
  new Set(group.flatMap(({ sewn: { line, use } }) => (line === null ? [use] : []))).size;

/** "seams 3, 5-7 and 2 ornaments" */
function where(group: readonly Shown[]): string {
  const lines = linesOf(group);
  const ornaments = ornamentsIn(group);
  return [
    ...(lines.length ? [lineList(lines)] : []),
    ...(ornaments ? [ornaments === 1 ? 'an ornament' : `${ornaments} ornaments`] : []),
  ].join(' and ');
}

/** The line of a finding that is about one alone; else where on a seam it is worst. */
function place(map: SeamMap, group: readonly Shown[]): Pick<Finding, 'seam' | 'at'> {
  const lines = linesOf(group);
  if (lines.length === 1) return { seam: lines[0] };
  const onSeams = group.flatMap(({ sewn: { line }, contrast: { places } }) =>
    line === null || line === 'outline'
      ? []
      : places.flatMap((one) =>
          one.from === undefined || one.to === undefined
            ? []
            : [{ seam: map.seams[line - 1], u: (one.from + one.to) / 2, shows: bestContrast(one) }],
        ),
  );
  if (onSeams.length === 0) return {};
  const { seam, u } = onSeams.reduce((a, b) => (b.shows < a.shows ? b : a));
  return { at: pointAtLength(seam.points, cumulativeLength(seam.points), u) };
}

/** Whether a lighter or a darker thread would stand out more, by what white and black would do. */
function better(map: SeamMap, group: readonly Shown[]): string {
  const worst = (hex: string) =>
    Math.min(
      ...group.flatMap(({ contrast: { places } }) =>
        places.map(({ sides }) =>
          Math.max(
            ...sides.flatMap(({ patch }) =>
              fabricOfPatch(map.patches[patch - 1])!
                .colors.slice(0, 1)
                .map((color) => contrast(hex, color.hex)),
            ),
          ),
        ),
      ),
    );
  const way = worst('#ffffff') > worst('#000000') ? 'lighter' : 'darker';
  // only the thread of rows can be set so
  const [line] = linesOf(group.filter(({ sewn: { kind } }) => kind === 'row'));
  const said = line === undefined ? '' : ` (--set ${line === 'outline' ? 'edge' : line}:thread=...)`;
  return `a ${way} thread${said} would show`;
}

function thinOnPrint(map: SeamMap, group: readonly Shown[]): Finding[] {
  if (group.length === 0) return [];
  const patches = new Set(
    group.flatMap(({ contrast: { places } }) =>
      places.flatMap(({ sides }) => sides.map(({ patch }) => patch)),
    ),
  );
  const busiest = [...patches].sort((a, b) => busyness(map, b) - busyness(map, a) || a - b)[0];
  const numbers = linesOf(group).filter((line) => line !== 'outline');
  const said = numbers.length ? numberRanges(numbers).replaceAll(', ', ',') : 'edge';
  return [
    {
      level: 'note',
      code: 'thin-on-print',
      message: `${where(group)} ${linesOf(group).length + ornamentsIn(group) === 1 ? 'lies' : 'lie'} on a busy print (patch ${busiest}${patches.size > 1 ? ' most' : ''}), where thread one weight heavier reads better, such as --set ${said}:passes=4`,
      ...place(map, group),
    },
  ];
}

const busyness = (map: SeamMap, patch: number): number => map.patches[patch - 1].print?.busyness ?? 0;

/** The same stitch in threads that look alike, where two treatments meet: they run into one another. */
function lookAlike(map: SeamMap, all: readonly Meeting[]): Finding[] {
  const alike = all.filter(({ difference, sameStitch }) => sameStitch && difference < ALIKE);
  if (alike.length === 0) return [];
  const count =
    alike.length === 1
      ? 'two treatments that meet look'
      : `${alike.length} pairs of treatments that meet look`;
  return [
    {
      level: 'note',
      code: 'look-alike',
      message: `${count} alike, in stitch and thread: ${pairs(alike)}; another stitch or thread on one of ${alike.length === 1 ? 'them' : 'each pair'} would set them off`,
      ...at(map, alike[0]),
    },
  ];
}

/** Two threads that differ in name alone, as far as the eye goes. */
function hardlyTwo(map: SeamMap, all: readonly Meeting[]): Finding[] {
  const near = all.filter(
    ({ threads: [a, b], difference }) => difference < ALIKE && threadName(a) !== threadName(b),
  );
  const key = ({ threads }: Meeting) => threads.map(threadName).sort().join(' and ');
  return [...groupBy(near, key)].map(([names, group]): Finding => {
    const least = Math.min(...group.map(({ difference }) => difference));
    return {
      level: 'note',
      code: 'threads-alike',
      message: `${names} can hardly be told apart where they meet (${pairs(group)}): difference ${least.toFixed(1)}, plain from ${ALIKE}; one of the two would do, and saves a thread`,
      ...at(map, group[0]),
    };
  });
}

const MOST_PAIRS = 4;

function pairs(list: readonly Meeting[]): string {
  const told = list.slice(0, MOST_PAIRS).map(({ lines: [a, b] }) => `${a} and ${b}`);
  const more = list.length - told.length;
  return `seams ${told.join(', ')}${more > 0 ? ` and ${more} more` : ''}`.replaceAll(
    'outline',
    'the outline',
  );
}

function at(map: SeamMap, { lines: [a, b] }: Meeting): Pick<Finding, 'at'> {
  const point = meetingPoint(map, a, b);
  return point ? { at: point } : {};
}
