import { density } from '../../check/density/density.js';
import type { DensityLimits } from '../../check/density/limits.js';
import type { LengthUnit } from '../../geometry/units.js';
import { lines, patchFace } from '../map-picture.js';
import { traceLine, traceRing } from '../pen.js';
import { mutedCloth } from '../shade.js';
import { element, type Frame, svgDocument, title } from '../svg.js';
import { pathData } from '../svg-pen.js';
import { bareOverlay } from './bare-marks.js';
import { contrastOverlay } from './contrast-marks.js';
import { type Counted, heatOverlay, heatPatterns } from './heat.js';
import { holesOverlay } from './hole-dots.js';
import { type LegendPart, legend, rulerPart, SAMPLE_BOX } from './legend.js';
import { numbersOverlay } from './numbers.js';
import type { Overlay } from './overlay.js';
import { type Shown, showsThread } from './show.js';
import type { ShownWork } from './shown-work.js';
import { stopsOverlay } from './stop-lines.js';

const HOLES: Counted = { noun: 'holes', heading: 'Needle holes for each mm2, within 1 mm of a place' };
const THREADS: Counted = {
  noun: 'threads',
  heading: 'Threads one over another on the average of each mm2',
};
const MARGIN = 4;
const SEAM = '#4a5560';
/** How far toward white fabrics are drawn under what is measured, 0 to 1. */
const PALE = 0.8;
/** Colors that lie on thread let it shimmer through. */
const OVER_THREAD = 0.7;

/**
 * A piece of work at true size with what one wants to see of it before sewing: density as colored cloth, color stops in
 * looks of their own, needle holes, bare seam, numbers. What is measured is measured first, of the stops that are shown; a
 * legend tells it in numbers.
 *
 * @param as what lengths are told in
 */
export function drawOverlays(
  work: ShownWork,
  shown: ReadonlySet<Shown>,
  limits: DensityLimits,
  as: LengthUnit = 'mm',
): string {
  const { frame } = work;
  const [width, height] = [frame.right - frame.left, frame.bottom - frame.top];
  const { picture, parts } = measuredOn(work, shown, limits, as);
  const below = legend(
    headline(work),
    [...parts, rulerPart(width, height, as)],
    frame.left,
    frame.bottom + MARGIN,
    width,
  );
  const whole: Frame = {
    left: frame.left - MARGIN,
    top: frame.top - MARGIN,
    right: frame.left + Math.max(width, below.width) + MARGIN,
    bottom: frame.bottom + MARGIN + below.height + MARGIN,
  };
  return svgDocument(
    whole,
    work.name,
    heatPatterns(),
    element('rect', { ...boxOf(whole), fill: '#fff' }),
    picture,
    element('g', {}, title('legend'), below.picture),
  );
}

/** A picture of the cloth alone, with nothing but labels around it, and what is to be told beside it: each look as a small picture of its own. */
export interface ToldApart {
  readonly svg: string;
  readonly told: readonly {
    readonly heading: string;
    readonly entries: readonly { readonly svg: string; readonly told: string }[];
  }[];
}

/**
 * The same as the cloth alone, for where a legend would be as small as the picture is shown.
 *
 * @param least numbers are not smaller than this, mm: what is read where the whole is shown small
 */
export function overlaysToldApart(
  work: ShownWork,
  shown: ReadonlySet<Shown>,
  limits: DensityLimits,
  as: LengthUnit = 'mm',
  least = 0,
): ToldApart {
  const { picture, parts, size } = measuredOn(work, shown, limits, as, least);
  const { left, top, right, bottom } = work.frame;
  // what is read of the edge of the cloth may lie beyond it
  const beyond = MARGIN + 2 * size;
  const room: Frame = {
    left: left - beyond,
    top: top - beyond,
    right: right + beyond,
    bottom: bottom + beyond,
  };
  const looks = ({ entries }: LegendPart) =>
    entries.map(({ sample, told }) => ({
      svg: svgDocument(SAMPLE_BOX, told, heatPatterns(), sample(0, 0)),
      told,
    }));
  return {
    svg: svgDocument(room, work.name, heatPatterns(), picture),
    told: parts.map((part) => ({ heading: part.heading, entries: looks(part) })),
  };
}

/** What is measured over the cloth, and what a legend says of it. */
function measuredOn(
  work: ShownWork,
  shown: ReadonlySet<Shown>,
  limits: DensityLimits,
  as: LengthUnit,
  least = 0,
): { picture: string; parts: LegendPart[]; size: number } {
  const { map, frame, stitches, bare, contrasts } = work;
  const width = frame.right - frame.left;
  const height = frame.bottom - frame.top;
  const size = Math.max(2.2, least, Math.min(width, height) / 50);
  const withThread = showsThread(shown);
  const heat = heatOverlays(work, shown, limits, size, withThread ? OVER_THREAD : 1);
  const measured = [
    ...(shown.has('stops') ? [stopsOverlay(work)] : []),
    ...(shown.has('holes') ? [holesOverlay(stitches, limits.inOneHole.warning)] : []),
    ...(shown.has('bare') && map && bare ? [bareOverlay(map, bare, size, as)] : []),
  ];
  const taken = [...heat, ...measured].flatMap((one) => one.taken ?? []);
  if (shown.has('contrast') && map && contrasts) {
    const contrast = contrastOverlay(map, contrasts(), { frame, size, taken, isPale: !withThread });
    // under the others: it goes along all seams
    measured.unshift(contrast);
    taken.push(...(contrast.taken ?? []));
  }
  const isNumbered = shown.has('stops') || shown.has('numbers');
  const numbers = isNumbered ? [numbersOverlay(work, shown.has('numbers'), size, taken)] : [];
  const marks = [...measured, ...numbers];
  return {
    picture: [
      withThread ? work.thread() : paleCloth(work),
      ...heat.map(({ picture }) => picture),
      seamLines(work, withThread && heat.length === 0),
      ...marks.map(({ picture }) => picture),
      ...[...heat, ...measured].map(({ labels = '' }) => labels),
    ].join(''),
    parts: [...heat, ...marks].map(({ part }) => part),
    size,
  };
}

function heatOverlays(
  { stitches }: ShownWork,
  shown: ReadonlySet<Shown>,
  limits: DensityLimits,
  size: number,
  opacity: number,
): Overlay[] {
  if (!shown.has('density') && !shown.has('layers')) return [];
  const { holes, depth } = density(stitches);
  return [
    ...(shown.has('density') ? [heatOverlay(holes, limits.holes, HOLES, size, opacity)] : []),
    ...(shown.has('layers') ? [heatOverlay(depth, limits.layers, THREADS, size, opacity)] : []),
  ];
}

/** What the picture is of. */
function headline({ name, stops }: ShownWork): string {
  const numbers = stops.flatMap(({ isShown }, i) => (isShown ? [i + 1] : []));
  if (numbers.length === stops.length) return `${name}, all ${stops.length} color stops sewn`;
  const of = `of ${stops.length}`;
  if (numbers.length > 0 && numbers[numbers.length - 1] === numbers.length) {
    return `${name} after color stop ${numbers.length} ${of}`;
  }
  return `${name}, color ${numbers.length === 1 ? 'stop' : 'stops'} ${ranges(numbers)} ${of} alone`;
}

/** Ascending numbers as '1-3, 7'. */
function ranges(numbers: readonly number[]): string {
  const told: string[] = [];
  for (let i = 0; i < numbers.length; ) {
    let j = i;
    while (numbers[j + 1] === numbers[j] + 1) j++;
    told.push(i === j ? `${numbers[i]}` : `${numbers[i]}-${numbers[j]}`);
    i = j + 1;
  }
  return told.join(', ');
}

/** Cloth that lets colors stand out: patches pale in their fabrics. */
function paleCloth({ map, frame }: ShownWork): string {
  const all = element('rect', { ...boxOf(frame), fill: map?.patches.length ? '#fff' : mutedCloth(4) });
  return (
    all + element('g', { stroke: 'none' }, ...(map?.patches ?? []).map((patch) => patchFace(patch, PALE)))
  );
}

/** Seams and outline as thin lines; where thread lies on cloth, its folds show them already. */
function seamLines({ map }: ShownWork, isOnFolds: boolean): string {
  if (!map || isOnFolds) return '';
  const d = pathData((pen) => {
    for (const { points } of map.seams) traceLine(pen, points);
    if (map.outline) traceRing(pen, map.outline.points);
  });
  return (
    element('g', lines('#ffffff', 0.55), element('path', { d, 'stroke-opacity': 0.6 })) +
    element('g', lines(SEAM, 0.25), title('seams'), element('path', { d }))
  );
}

const boxOf = ({ left, top, right, bottom }: Frame) => ({
  x: left,
  y: top,
  width: right - left,
  height: bottom - top,
});
