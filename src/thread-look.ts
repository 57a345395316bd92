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
    const { rows, accents = [] } = dressing.treatments[treatment];
    return layers.map(({ kind, title, thread, runs }, l): SewnThread => {
      const { index } = fit.layers[l];
      const passes = kind === 'row' ? rows[index].passes : kind === 'accent' ? accents[index].passes : 1;
      const stitch = kind === 'accent' ? (accents[index].ornament ?? '') : rows[index]?.stitch;
      return { line: fit.seam, title, kind, thread, stitch, isHeavy: isHeavy(thread.weight, passes), runs };
    });
  });
  const free = ornaments.map(
    ({ ornament, title, thread, runs }): SewnThread => ({
      line: null,
      title,
      kind: 'ornament',
      thread,
      stitch: dressing.ornaments![ornament].ornament,
      isHeavy: isHeavy(thread.weight, dressing.ornaments![ornament].passes),
      runs,
    }),
  );
  return [...ofLines, ...free].filter(({ runs }) => runs.start.length > 1);
}

/** How broad passes of a thread lie side by side, mm. */
function laid(weight: string, passes: number): number {
  const { threadWidth, spread } = craftFor(weight);
  return threadWidth + (passes - 1) * spread;
}

/** Heavier than usual, the usual passes of No. 40, by a pass or by as much in the thread. */
const isHeavy = (weight: string, passes: number): boolean =>
  laid(weight, passes) >= laid('No. 40', DEFAULT_PASSES + 1) - 1e-9;
