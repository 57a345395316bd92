import { type Field, mostOf } from '../../check/density/field.js';
import { type HotPlace, hotPlaces } from '../../check/density/hot-places.js';
import type { Limit } from '../../check/density/limits.js';
import { boxAt, squareAt } from '../../geometry/box.js';
import { darkPlate, darkPlateSize } from '../number-plates.js';
import { element, title } from '../svg.js';
import { pathData } from '../svg-pen.js';
import { traceCells } from './cell-outline.js';
import { type HeatStep, heatScale } from './heat-scale.js';
import type { LegendEntry } from './legend.js';
import type { Overlay } from './overlay.js';

/** Stripes on what is more than a limit: one way above the warning, both ways above the error. */
const STRIPES = {
  warning: 'M-.2 .2L.2 -.2M0 1.2L1.2 0M1 1.4L1.4 1',
  error: 'M-.2 .2L.2 -.2M0 1.2L1.2 0M1 1.4L1.4 1M1 -.2L1.4 .2M0 0L1.2 1.2M-.2 1L.2 1.4',
} as const;
/** So many of the densest places are named by their value. */
const NAMED = 3;
/** Of the ring round a place that is named, mm. */
const RING = 1.6;
const EDGE = '#22313f';

/** Patterns that heat needs in a document, once. */
export const heatPatterns = (): string =>
  element(
    'defs',
    {},
    ...(['warning', 'error'] as const).map((grade) =>
      element(
        'pattern',
        { id: `stripes-${grade}`, width: 1.2, height: 1.2, patternUnits: 'userSpaceOnUse' },
        element('path', { d: STRIPES[grade], fill: 'none', stroke: '#ffffff', 'stroke-width': 0.18 }),
      ),
    ),
  );

/** What a field counts: in one word, and as the legend's heading tells it. */
export interface Counted {
  readonly noun: string;
  readonly heading: string;
}

/**
 * A field as colored cloth with its legend; the densest places have their values beside them.
 * @param opacity of the colors over what they lie on, 0 to 1
 */
export function heatOverlay(
  field: Field,
  limit: Limit,
  { noun, heading }: Counted,
  size: number,
  opacity: number,
): Overlay {
  const scale = heatScale(limit);
  const densest = densestPlaces(field, 5 * size);
  return {
    picture: heatPicture(field, scale, noun, opacity),
    labels: peaks(densest, noun, size),
    taken: densest.flatMap((place) => {
      const { text, at, size: high } = peakPlate(place, size);
      const { width, height } = darkPlateSize(text, high);
      return [squareAt(place.at, RING), boxAt(at, width, height)];
    }),
    part: {
      heading: `${heading}: ${shortNumber(mostOf(field))} at the most`,
      entries: scale.map((step, i) => entryOf(step, scale[i + 1])),
    },
  };
}

/**
 * One shape a step, each of all cells above its bound and over the one before: cells show the color of the highest step that
 * they reach. Cells of which nothing was counted stay bare.
 */
export function heatPicture(field: Field, scale: readonly HeatStep[], noun: string, opacity: number): string {
  const shapes = scale.flatMap(({ above, hex, grade }) => {
    // the least whole count that is worth more than the bound
    const least = Math.floor(above / field.unit + 1e-9) + 1;
    const d = pathData((pen) => traceCells(field, least, pen));
    if (d === '') return [];
    const told = above === 0 ? `any ${noun}` : `${noun} above ${shortNumber(above)}`;
    return [
      element('path', { d, fill: hex }, title(told)),
      ...(grade === 'usual' ? [] : [element('path', { d, fill: `url(#stripes-${grade})` })]),
    ];
  });
  return element(
    'g',
    { 'shape-rendering': 'crispEdges', ...(opacity < 1 && { opacity }) },
    title(`density, ${noun}`),
    ...shapes,
  );
}

function entryOf({ above, hex, grade }: HeatStep, next: HeatStep | undefined): LegendEntry {
  const box = (x: number, y: number, fill: string, rest = {}) =>
    element('rect', { x: x - 3.5, y: y - 1.5, width: 7, height: 3, fill, ...rest });
  const bounds = next ? `${shortNumber(above)} to ${shortNumber(next.above)}` : `above ${shortNumber(above)}`;
  return {
    sample: (x, y) =>
      box(x, y, hex, { stroke: EDGE, 'stroke-width': 0.12 }) +
      (grade === 'usual' ? '' : box(x, y, `url(#stripes-${grade})`)),
    told: {
      usual: bounds,
      warning: `${bounds}, striped: worth a look`,
      error: `${bounds}, crossed: too much`,
    }[grade],
  };
}

/** Rings round the densest places with their values. */
function peaks(densest: readonly HotPlace[], noun: string, size: number): string {
  const places = densest.map((place) => {
    const [cx, cy] = place.at;
    const plate = peakPlate(place, size);
    return element(
      'g',
      { fill: 'none' },
      title(`${plate.text} ${noun}`),
      element('circle', { cx, cy, r: RING, stroke: '#fff', 'stroke-width': 0.7 }),
      element('circle', { cx, cy, r: RING, stroke: EDGE, 'stroke-width': 0.3 }),
      darkPlate(plate.text, plate.at, plate.size),
    );
  });
  return places.length ? element('g', {}, title(`densest places, ${noun}`), ...places) : '';
}

/** A value above the ring round its place. */
const peakPlate = ({ at: [x, y], value }: HotPlace, size: number) => ({
  text: value.toFixed(1),
  at: [x, y - RING - size] as const,
  size: size * 0.8,
});

/** Places as far as they stand apart, the densest first. */
function densestPlaces(field: Field, apart: number): HotPlace[] {
  const found = hotPlaces(field, mostOf(field) * 0.6).sort((a, b) => b.value - a.value);
  const kept: HotPlace[] = [];
  for (const place of found) {
    const isFar = ({ at: [x, y] }: HotPlace) => Math.hypot(place.at[0] - x, place.at[1] - y) > apart;
    if (kept.length < NAMED && kept.every(isFar)) kept.push(place);
  }
  return kept;
}

/** At most two digits behind the point, and none that say nothing. */
const shortNumber = (value: number): string => String(Math.round(value * 100) / 100);
