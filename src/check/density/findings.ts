import type { Finding } from '../../finding.js';
import { causesOf } from './causes.js';
import type { Density } from './density.js';
import { type HotPlace, hotPlaces } from './hot-places.js';
import type { DensityLimits, Limit } from './limits.js';
import type { SewnStitches } from './sewn-stitches.js';
import { sharedHoles } from './shared-holes.js';

/** A color stop as findings name it. */
export interface NamedStop {
  /** empty where nothing is known of it */
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
 * Places where stitches stand too densely, gathered by what makes them so: a treatment by itself, several where they meet,
 * or what came with the block. One finding for all places of a measure with the same cause, told by the worst.
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

/** What makes a place dense, which decides what would help. */
type Kind = 'own' | 'meeting' | 'on-existing' | 'existing';

const REMEDIES: Readonly<Record<Kind, string>> = {
  own: 'a larger size, fewer passes or a finer thread would ease it',
  meeting: 'where they meet, a smaller or thinner one, or one that stops short of the other, would ease it',
  'on-existing': 'keep the treatment clear of what came with the block, or leave one of the two out',
  existing: 'it came with the block; sew a test on scrap, with a firm stabilizer',
};

interface Group {
  readonly kind: Kind;
  readonly places: { readonly place: HotPlace; readonly cause: readonly number[] }[];
}

function gathered(
  { code, limit, places, told }: Measure,
  causes: readonly (readonly number[])[],
  stops: readonly NamedStop[],
): Finding[] {
  const groups = new Map<Kind, Group>();
  places.forEach((place, i) => {
    const kind = kindOf(causes[i].map((stop) => stops[stop]));
    const group = groups.get(kind) ?? { kind, places: [] };
    group.places.push({ place, cause: causes[i] });
    groups.set(kind, group);
  });
  return [...groups.values()].map(({ kind, places }): Finding => {
    const worst = places.reduce((a, b) => (b.place.value > a.place.value ? b : a));
    const cause = [...worst.cause].sort((a, b) => a - b);
    const others = new Set(places.flatMap((one) => one.cause).filter((stop) => !cause.includes(stop)));
    const also = others.size === 0 ? '' : `, of ${others.size} more stop${others.size > 1 ? 's' : ''} too`;
    const where = places.length === 1 ? '' : `, the worst of ${places.length} places${also}`;
    const names = cause.map((stop) => nameOf(stop, stops[stop]));
    return {
      level: worst.place.value > limit.error ? 'error' : 'warning',
      code,
      message: `${listed(names)}: ${told(worst.place.value)}${where}; ${REMEDIES[kind]}`,
      ...(cause.length > 0 && { stop: cause[0] + 1 }),
      at: worst.place.at,
    };
  });
}

function kindOf(cause: readonly NamedStop[]): Kind {
  const came = cause.filter(({ isExisting }) => isExisting).length;
  if (came === cause.length) return 'existing';
  if (came > 0) return 'on-existing';
  return cause.length > 1 ? 'meeting' : 'own';
}

const nameOf = (stop: number, { title }: NamedStop): string =>
  `stop ${stop + 1}${title ? ` (${title.toLowerCase()})` : ''}`;

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
