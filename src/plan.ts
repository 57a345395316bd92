import { checkSeam } from './block/known-seams.js';
import type { SeamMap } from './block/seam-map.js';
import { DEFAULT_GAP } from './fit/ends.js';
import { referenceTo } from './fit/seam-reference.js';
import { checkValues } from './fit/sized.js';
import {
  type BlockSource,
  DRESSING_VERSION,
  type Dressing,
  type Guide,
  type Manner,
  type ThreadChoice,
  type Treatment,
  type Work,
} from './formats/dressing.js';
import type { SavedTreatment } from './formats/treatment.js';
import { classicStitches, stitchesInTurn } from './harmony/classic.js';
import { PALETTE } from './harmony/palette.js';
import { DEFAULT_PASSES } from './harmony/passes.js';
import { InputError } from './input-error.js';
import type { Dictionary } from './stitches/dictionary.js';
import type { Figure } from './stitches/stitch.js';

export interface PlanOptions {
  readonly source: BlockSource;
  readonly dictionary: Dictionary;
  /** one stitch for every seam; otherwise stitches are chosen so that seams that meet differ */
  readonly stitch?: string;
  /** one saved treatment for every seam, instead */
  readonly treatment?: SavedTreatment;
  /** seams to dress; otherwise all */
  readonly seams?: readonly number[];
  /** how many times as large the block is to be: wide stitches want long seams */
  readonly scale?: number;
  readonly repeat?: number;
  readonly width?: number;
  readonly ends?: Manner;
  readonly edge?: string;
  /** what is drawn along the seams and stitched on */
  readonly guide?: Guide;
  readonly outline?: 'trim' | 'join' | 'free';
  readonly gap?: number;
  readonly after?: number;
  /** for everything seeded; 1 when not given */
  readonly seed?: number;
  /** color of the first thread, '#rrggbb' */
  readonly thread?: string;
}

/** The threads of a dressing that nobody chose: further ones are for lacing and for flowers. */
export const USUAL_THREADS: readonly ThreadChoice[] = PALETTE.slice(0, 4);

/** A dressing made from a few choices: what is not said is chosen so that seams that meet differ. */
export function defaultDressing(map: SeamMap, options: PlanOptions): Dressing {
  for (const id of options.seams ?? []) {
    checkSeam(map, id, `--seam ${id}`);
  }
  if (options.edge && !map.outline) {
    throw new InputError(
      'no-outline',
      `--edge ${options.edge}`,
      'the block has no outline',
      'leave --edge away',
    );
  }
  const wanted = new Set(options.seams ?? map.seams.map((seam) => seam.id));
  const seams = map.seams.filter((seam) => wanted.has(seam.id));
  for (const name of [options.stitch, options.edge]) {
    const stitch = name && options.dictionary.stitches.get(name);
    if (stitch) checkValues(stitch, sizesAsked(options));
  }
  const chosen = options.stitch
    ? new Map(seams.map((seam) => [seam.id, options.stitch!]))
    : options.treatment
      ? new Map()
      : stitchesInTurn(
          map,
          seams,
          classicStitches(options.dictionary, options),
          options.dictionary.stitches.get(options.edge ?? ''),
          options.scale,
        );
  const sizes = sizesAsked(options);
  const oneRow = (stitch: string): Work => ({
    rows: [
      {
        stitch,
        parameters: sizes,
        thread: 0,
        ...moreThreads(options.dictionary.stitches.get(stitch)),
        passes: DEFAULT_PASSES,
        offset: 0,
      },
    ],
  });
  const worked = (work: Work): Work => (options.guide ? onGuide(work, options.guide) : work);
  const treatment = (seam: Treatment['seam'], work: Work): Treatment => ({
    seam,
    ...work,
    ends: null,
    side: null,
    reverse: false,
  });
  const saved = options.treatment;
  const treatments = seams.map((seam) =>
    treatment(referenceTo(seam), worked(saved ? workOf(saved) : oneRow(chosen.get(seam.id)!))),
  );
  if (options.edge) {
    treatments.push(treatment({ id: 'outline', middle: null, ends: null }, oneRow(options.edge)));
  }
  return {
    format: 'seamwright-dressing',
    version: DRESSING_VERSION,
    block: options.source,
    ends: options.ends ?? 'tuck',
    outline: options.outline ?? 'trim',
    gap: options.gap ?? DEFAULT_GAP,
    treatments,
    threads: inColor(saved ? saved.threads : threadsUsed(treatments), options.thread),
    hoop: null,
    after: options.after ?? null,
    seed: options.seed ?? 1,
  };
}

/** The same work on a guide line; interlaced lines get a row each, back to back. */
function onGuide(work: Work, guide: Guide): Work {
  const isAlone = guide.shape === 'interlace' && work.rows.length === 1;
  return { ...work, guide, rows: isAlone ? [work.rows[0], { ...work.rows[0], flip: true }] : work.rows };
}

/** A figure's further threads, each of the next usual one. */
export function moreThreads(figure: Figure | undefined): { moreThreads?: readonly number[] } {
  const more = (figure?.threads.length ?? 1) - 1;
  if (more <= 0) return {};
  return { moreThreads: Array.from({ length: more }, (_, k) => (k + 1) % USUAL_THREADS.length) };
}

const sizesAsked = ({ repeat, width }: PlanOptions): Record<string, number> => ({
  ...(repeat !== undefined && { repeat }),
  ...(width !== undefined && { width }),
});

/** The first thread in another color, which then is its name. */
const inColor = (threads: readonly ThreadChoice[], hex: string | undefined): readonly ThreadChoice[] =>
  hex === undefined
    ? threads
    : threads.map((thread, i) => (i === 0 ? { ...thread, name: hex, hex } : thread));

/** The usual threads up to the last one that is named. */
function threadsUsed(treatments: readonly Treatment[]): ThreadChoice[] {
  const named = treatments.flatMap(({ rows }) => rows.flatMap((row) => row.moreThreads ?? []));
  return USUAL_THREADS.slice(0, 1 + Math.max(0, ...named));
}

/** The rows, accents, what is laid and the guide line of a saved treatment: its threads are the dressing's own. */
const workOf = ({ rows, accents, laid, guide }: SavedTreatment): Work => ({
  rows,
  ...(accents && { accents }),
  ...(laid && { laid }),
  ...(guide && { guide }),
});
