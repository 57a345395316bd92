import { passesIn } from './asked/heaviness.js';
import { contrastFindings } from './check/contrast/contrast-findings.js';
import { type ContrastLook, contrastLook, type SewnThread } from './check/contrast/thread-contrast.js';
import type { Difference } from './color/difference.js';
import type { Dressed } from './dress.js';
import type { Finding } from './finding.js';
import { DEFAULT_PASSES } from './harmony/passes.js';
import { craftFor } from './needle/craft.js';

/** How the threads of a dressed block stand out from its fabrics and from each other. */
export interface ThreadLook extends ContrastLook {
  readonly findings: readonly Finding[];
}

export function threadLook(dressed: Dressed, difference: Difference): ThreadLook {
  const { map } = dressed.block;
  const look = contrastLook(map, sewnThreads(dressed), difference);
  return { ...look, findings: contrastFindings(map, look) };
}

/** Every thread of rows, accents and ornaments as it is sewn, in the order of lines; what is left out is not among them. */
export function sewnThreads({ lines, ornaments, dressing }: Dressed): SewnThread[] {
  const ofLines = lines.flatMap(({ treatment, fit, layers }) => {
    const { rows, accents = [], laid: under } = dressing.treatments[treatment];
    return layers.map(({ kind, title, thread, runs }, l): SewnThread => {
      const { index, thread: nth } = fit.layers[l];
      const figure = kind === 'row' ? rows[index] : kind === 'accent' ? accents[index] : null;
      const passes = figure ? passesIn(dressing, figure) : 1;
      return {
        line: fit.seam,
        use: useOf('treatment', treatment, figure ? threadIndex(figure, nth) : under!.thread),
        title,
        kind,
        thread,
        stitch:
          kind === 'row' ? rows[index].stitch : kind === 'accent' ? (accents[index].ornament ?? '') : '',
        isHeavy: isHeavy(thread.weight, passes),
        passes,
        runs,
      };
    });
  });
  const free = ornaments.map(({ ornament, nth, title, thread, runs }): SewnThread => {
    const placed = dressing.ornaments![ornament];
    const passes = passesIn(dressing, placed);
    return {
      line: null,
      use: useOf('ornament', ornament, threadIndex(placed, nth)),
      title,
      kind: 'ornament',
      thread,
      stitch: placed.ornament,
      isHeavy: isHeavy(thread.weight, passes),
      passes,
      runs,
    };
  });
  return [...ofLines, ...free].filter(({ runs }) => runs.start.length > 1);
}

/** What names a thread of the dressing within one treatment or ornament. */
export const useOf = (of: 'treatment' | 'ornament', index: number, thread: number): string =>
  `${of} ${index} thread ${thread}`;

/** Which of the dressing's threads the nth of a figure is; those not named take the first. */
const threadIndex = (
  { thread, moreThreads = [] }: { readonly thread: number; readonly moreThreads?: readonly number[] },
  nth: number,
): number => (nth === 0 ? thread : (moreThreads[nth - 1] ?? thread));

/** How broad passes of a thread lie side by side, mm. */
function laid(weight: string, passes: number): number {
  const { threadWidth, spread } = craftFor(weight);
  return threadWidth + (passes - 1) * spread;
}

/** Heavier than usual, the usual passes of No. 40, by a pass or by as much in the thread. */
export const isHeavy = (weight: string, passes: number): boolean =>
  laid(weight, passes) >= laid('No. 40', DEFAULT_PASSES + 1) - 1e-9;
