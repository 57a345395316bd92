import type { Seam, SeamMap } from './block/seam-map.js';
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
import { polylineLength } from './geometry/polyline.js';
import { InputError } from './input-error.js';
import type { Dictionary } from './stitches/dictionary.js';
import type { Figure, Stitch } from './stitches/stitch.js';

export interface PlanOptions {
  readonly source: BlockSource;
  readonly dictionary: Dictionary;
  /** one stitch for every seam; otherwise stitches are chosen so that seams that meet differ */
  readonly stitch?: string;
  /** one saved treatment for every seam, instead */
  readonly treatment?: SavedTreatment;
  /** seams to dress; otherwise all */
  readonly seams?: readonly number[];
  readonly repeat?: number;
  readonly width?: number;
  readonly ends?: Manner;
  readonly edge?: string;
  /** what is drawn along the seams and stitched on */
  readonly guide?: Guide;
  readonly outline?: 'trim' | 'join' | 'free';
  readonly gap?: number;
  readonly after?: number;
  /** color of the first thread, '#rrggbb' */
  readonly thread?: string;
}

/** Default weight: three passes of No. 40 are about as heavy as pearl No. 5. Common practice. */
export const DEFAULT_PASSES = 3;
/** Gold on every seam is the old way with crazy patchwork; further threads are for lacing and for flowers. Common practice. */
export const USUAL_THREADS: readonly ThreadChoice[] = [
  { name: 'Old gold', hex: '#c9a227', weight: 'No. 40' },
  { name: 'Garnet', hex: '#8c2f3f', weight: 'No. 40' },
  { name: 'Leaf green', hex: '#5f7f42', weight: 'No. 40' },
  { name: 'Ivory', hex: '#f1e6c8', weight: 'No. 40' },
];

/** Stitches chosen from when none is named: wide ones that every worker of crazy patchwork knows. Common practice. */
const CLASSIC = [
  'blanket',
  'chevron',
  'cretan',
  'double-feather',
  'feather',
  'fly',
  'herringbone',
  'lazy-daisy',
];

/** A dressing made from a few choices: what is not said is chosen so that seams that meet differ. */
export function defaultDressing(map: SeamMap, options: PlanOptions): Dressing {
  for (const id of options.seams ?? []) {
    if (id <= map.seams.length) continue;
    throw new InputError(
      'unknown-seam',
      `--seam ${id}`,
      'the block has no such seam',
      map.seams.length ? `its seams are 1 to ${map.seams.length}` : 'it has none',
    );
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
      : chosenStitches(map, seams, offeredStitches(options));
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
    seed: 1,
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

/** The stitches that can be worked at the sizes asked for. */
function offeredStitches({ dictionary: { stitches }, repeat, width }: PlanOptions): Stitch[] {
  const takes = (stitch: Stitch, name: string, size: number | undefined) => {
    const { min, max } = stitch.parameters.find((parameter) => parameter.name === name)!;
    return size === undefined || (size >= min && size <= max);
  };
  const classic = CLASSIC.flatMap((name) => stitches.get(name) ?? []);
  const fitting = (classic.length ? classic : [...stitches.values()]).filter(
    (stitch) => takes(stitch, 'repeat', repeat) && takes(stitch, 'width', width),
  );
  if (fitting.length > 0) return fitting;
  const asked = [repeat !== undefined && `--repeat ${repeat}`, width !== undefined && `--width ${width}`];
  throw new InputError(
    'no-stitch-of-size',
    asked.filter(Boolean).join(' '),
    'no stitch can be worked at this size',
    'choose one with --stitch; seamwright stitches tells their sizes',
  );
}

/**
 * A stitch for each seam: longest seams first, each gets the one used least so far among those that no seam it meets
 * has; wide stitches go to long seams because the widest are offered first.
 */
function chosenStitches(
  map: SeamMap,
  seams: readonly Seam[],
  stitches: readonly Stitch[],
): Map<number, string> {
  const width = (stitch: Stitch) => stitch.parameters.find(({ name }) => name === 'width')!.default;
  const offered = [...stitches].sort((a, b) => width(b) - width(a) || (a.name < b.name ? -1 : 1));
  const meets = meetingSeams(map);
  const length = new Map(seams.map((seam) => [seam.id, polylineLength(seam.points)]));
  const used = new Map(offered.map((stitch) => [stitch.name, 0]));
  const chosen = new Map<number, string>();
  for (const seam of [...seams].sort((a, b) => length.get(b.id)! - length.get(a.id)! || a.id - b.id)) {
    const near = new Set([...(meets.get(seam.id) ?? [])].map((id) => chosen.get(id)));
    const fits = (stitch: Stitch) => length.get(seam.id)! >= 3 * repeatOf(stitch);
    const best = [offered.filter((s) => !near.has(s.name) && fits(s)), offered.filter(fits), offered]
      .find((list) => list.length > 0)!
      .reduce((a, b) => (used.get(b.name)! < used.get(a.name)! ? b : a));
    chosen.set(seam.id, best.name);
    used.set(best.name, used.get(best.name)! + 1);
  }
  return chosen;
}

const repeatOf = (stitch: Stitch): number => stitch.parameters.find(({ name }) => name === 'repeat')!.default;

function meetingSeams(map: SeamMap): Map<number, Set<number>> {
  const meets = new Map<number, Set<number>>(map.seams.map((seam) => [seam.id, new Set()]));
  for (const { arms } of map.junctions) {
    const here = arms.map((arm) => arm.seam).filter((seam) => seam !== 'outline');
    for (const a of here) for (const b of here) if (a !== b) meets.get(a)!.add(b);
  }
  return meets;
}
