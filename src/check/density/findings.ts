import type { Finding } from '../../finding.js';
import { causesOf } from './causes.js';
import type { Density } from './density.js';
import { type HotPlace, hotPlaces } from './hot-places.js';
import type { DensityLimits, Limit } from './limits.js';
import type { SewnStitches } from './sewn-stitches.js';
import { sharedHoles } from './shared-holes.js';

/** A color stop as findings name it. */
export interface NamedStop {
  readonly title: string;
  /** it came with the block, and no treatment can mend it */
  readonly isExisting: boolean;
}

/** One measure that may be too dense somewhere. */
interface Measure {
  readonly code: string;
  readonly limit: Limit;
  readonly places: readonly HotPlace[];
  /** how a value is told, and what is dense */
  readonly told: (value: number) => string;
}

/**
 * Places where stitches stand too densely, gathered by the stops that make them so: one finding for all places of a
 * measure with the same cause, told by its worst.
 */
export function densityFindings(
  sewn: SewnStitches,
  { holes, depth }: Density,
  stops: readonly NamedStop[],
  limits: DensityLimits,
): Finding[] {
  const measures: Measure[] = [
    {
      code: 'dense-holes',
      limit: limits.holes,
      places: hotPlaces(holes, limits.holes.warning),
      told: (value) => `${value.toFixed(1)} holes a mm2`,
    },
    {
      code: 'deep-thread',
      limit: limits.layers,
      places: hotPlaces(depth, limits.layers.warning),
      told: (value) => `thread ${value.toFixed(1)} layers deep`,
    },
    {
      code: 'shared-hole',
      limit: limits.inOneHole,
      places: sharedHoles(sewn, limits.inOneHole.warning),
      told: (value) => `${value} times through one hole`,
    },
  ];
  return measures.flatMap((measure) => gathered(measure, causesOf(sewn, measure.places), stops));
}

function gathered(
  { code, limit, places, told }: Measure,
  causes: readonly (readonly number[])[],
  stops: readonly NamedStop[],
): Finding[] {
  const groups = new Map<string, { readonly cause: readonly number[]; readonly places: HotPlace[] }>();
  places.forEach((place, i) => {
    const cause = [...causes[i]].sort((a, b) => a - b);
    const key = cause.join();
    const group = groups.get(key) ?? { cause, places: [] };
    group.places.push(place);
    groups.set(key, group);
  });
  return [...groups.values()].map(({ cause, places }): Finding => {
    const worst = places.reduce((a, b) => (b.value > a.value ? b : a));
    const names = cause.map((stop) => `stop ${stop + 1} (${stops[stop].title.toLowerCase()})`);
    const where = places.length === 1 ? '' : `, in ${places.length} places`;
    return {
      level: worst.value > limit.error ? 'error' : 'warning',
      code,
      message: `${listed(names)}: ${told(worst.value)}${where}; ${remedy(cause.map((stop) => stops[stop]))}`,
      ...(cause.length > 0 && { stop: cause[0] + 1 }),
      at: worst.at,
    };
  });
}

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;

function remedy(cause: readonly NamedStop[]): string {
  const came = cause.filter(({ isExisting }) => isExisting).length;
  if (came === cause.length) return 'it came with the block; sew a test on scrap, with a firm stabilizer';
  if (came > 0) return 'keep the treatment clear of what came with the block, or leave one of the two out';
  if (cause.length > 1) return 'make one of them smaller or thinner, or let it stop short of the other';
  return 'a larger size, fewer passes or a finer thread would ease it';
}
