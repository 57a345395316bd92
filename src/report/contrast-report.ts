import { span } from '../check/contrast/contrast-findings.js';
import { bestContrast, type Verdict } from '../check/contrast/thread-contrast.js';
import { SEEN } from '../color/contrast.js';
import type { ThreadChoice } from '../formats/dressing.js';
import type { ThreadLook } from '../thread-look.js';
import { rounded, table } from './table.js';

/** How threads stand out from their fabrics, as the data that programs get. Contrast is a ratio from 1 to 21. */
export interface ContrastReport {
  readonly threads: readonly ContrastLine[];
  readonly meetings: readonly MeetingLine[];
}

export interface ContrastLine {
  /** null for an ornament */
  readonly seam: number | 'outline' | null;
  readonly title: string;
  readonly kind: 'placement' | 'row' | 'accent' | 'ornament';
  readonly thread: ThreadChoice;
  /** 0 to 1: 0 melts in on both sides everywhere, 1 is clear on one and visible on the other; null where no fabric is known */
  readonly score: number | null;
  readonly shows: Verdict;
  /** it lies on a busy print, and no heavier than usual */
  readonly thinOnPrint: boolean;
  readonly places: readonly {
    /** of its work */
    readonly share: number;
    /** along the seam; not along the outline and of ornaments */
    readonly fromMm?: number;
    readonly toMm?: number;
    readonly sides: readonly {
      readonly hand: 'left' | 'right' | null;
      readonly patch: number;
      readonly contrast: number;
      /** share of the way along which it is visible */
      readonly seen: number;
    }[];
  }[];
}

/** Two treatments that meet: CIEDE2000 difference of their first threads. */
export interface MeetingLine {
  readonly seams: readonly [number | 'outline', number | 'outline'];
  readonly difference: number;
  readonly sameStitch: boolean;
}

export function contrastReport({ threads, contrasts, meetings }: ThreadLook): ContrastReport {
  return {
    threads: contrasts.map(({ of, places, score, shows, isThinOnPrint }): ContrastLine => {
      const { line, title, kind, thread } = threads[of];
      return {
        seam: line,
        title,
        kind,
        thread,
        score: score === null ? null : rounded(score, 2),
        shows,
        thinOnPrint: isThinOnPrint,
        places: places.map(({ share, from, to, sides }) => ({
          share: rounded(share, 3),
          ...(from !== undefined && to !== undefined && { fromMm: rounded(from, 1), toMm: rounded(to, 1) }),
          sides: sides.map((side) => ({
            hand: side.hand,
            patch: side.patch,
            contrast: rounded(side.contrast, 2),
            seen: rounded(side.seen, 2),
          })),
        })),
      };
    }),
    meetings: meetings.map(({ lines, difference, sameStitch }) => ({
      seams: lines,
      difference: rounded(difference, 1),
      sameStitch,
    })),
  };
}

const words: Readonly<Record<Verdict, string>> = {
  clear: 'clear',
  visible: 'visible',
  lost: 'hardly at all',
  unknown: 'fabric not known',
};

/** The same for a person: a line for each thread, the contrast on its better side where that is least and where most. */
export function contrastText({ threads }: ContrastReport): string {
  if (threads.length === 0) return '';
  return [
    table(
      [
        { heading: 'Thread against fabric' },
        { heading: 'Seam' },
        { heading: 'Thread' },
        { heading: 'Contrast', figures: true },
        { heading: 'Patches' },
        { heading: 'Shows' },
      ],
      threads.map(({ seam, title, thread, places, shows }) => {
        const best = places.map(bestContrast);
        const [low, high] = [Math.min(...best), Math.max(...best)];
        const patches = [...new Set(places.flatMap(({ sides }) => sides.map(({ patch }) => patch)))];
        return [
          title,
          seam === null ? '' : String(seam),
          thread.name,
          places.length === 0 ? '' : span(low, high),
          patches.sort((a, b) => a - b).join(', '),
          shows === 'lost' && high >= SEEN ? 'not everywhere' : words[shows],
        ];
      }),
    ),
    'Contrast is that on the side where it shows better, along the seam: visible from 1.6, clear from 2.5.',
  ].join('\n');
}
