import type { Patch, SeamMap } from '../block/seam-map.js';
import type { Finding } from '../finding.js';
import { alongCloth, type Extent, extentOf, onCloth } from '../fit/figure-extent.js';
import type { Chain } from '../fit/fit.js';
import { ofOneThread, threadsByClass } from '../fit/one-thread.js';
import { ornamentChain, type Spot } from '../fit/place-ornament.js';
import { type SizedOrnament, sizedOrnament } from '../fit/sized-ornament.js';
import type { Dressing, PlacedOrnament, ThreadChoice } from '../formats/dressing.js';
import { longWay } from '../geometry/long-way.js';
import { nearer } from '../geometry/nearer.js';
import type { Point } from '../geometry/point.js';
import { InputError } from '../input-error.js';
import type { Dictionary } from '../stitches/dictionary.js';
import type { Ornament } from '../stitches/stitch.js';
import { freePlaces, type Ground, patchNamed, type Standing, standIn } from './free-place.js';
import { passesIn, spreadIn } from './heaviness.js';
import { offBlock } from './off-block.js';
import { inKeptArea, madeSmaller, noRoom } from './ornament-findings.js';
import { ornamentNamed } from './ornament-named.js';
import { Slips, within } from './slips.js';
import { threadOf, withThread } from './threads.js';

/** One thread of a free-standing figure: a color stop. */
export interface OrnamentLayer {
  /** index into the dressing's ornaments, and which of the figure's threads, from 0 */
  readonly ornament: number;
  readonly nth: number;
  readonly title: string;
  readonly thread: ThreadChoice;
  /** how far apart its passes lie where not as usual, mm */
  readonly spread?: number;
  readonly chain: Chain;
}

export interface PlacedOrnaments {
  /** in the order in which the dressing names them */
  readonly layers: readonly OrnamentLayer[];
  readonly findings: readonly Finding[];
}

/** An ornament of the dictionary as the dressing asks for it. */
export interface AskedOrnament {
  readonly placed: PlacedOrnament;
  /** what findings call it: ornament 2 (daisy) */
  readonly name: string;
  readonly ornament: Ornament;
  readonly figure: SizedOrnament;
  /** how often its visible legs are sewn */
  readonly passes: number;
  /** null when it has a place of its own */
  readonly patch: Patch | null;
}

/**
 * The ornaments that a dressing places, thread by thread, as they stand on the cloth. Those with a place of their own
 * stand there; those that name a patch find the largest room that is left in it, one after the other.
 * What would reach into an area that is kept clear, or finds no room, is left out with a finding.
 *
 * @throws InputError when the dictionary has no such ornament, a size is out of its range or a patch is not there
 */
export function placedOrnaments(dressing: Dressing, dictionary: Dictionary, ground: Ground): PlacedOrnaments {
  const slips = new Slips();
  const asked = (dressing.ornaments ?? []).flatMap((placed, k) =>
    slips.caught(() =>
      within(`ornament ${k + 1}`, ['ornaments', k], () => [
        askedOrnament(placed, k, dressing, dictionary, ground.map),
      ]),
    ),
  );
  slips.tell();
  if (asked.length === 0) return { layers: [], findings: [] };
  const findings: Finding[] = [];
  const places = freePlaces(ground);
  const standing = new Map<AskedOrnament, Standing>();
  for (const one of asked) {
    if (one.patch) continue;
    const stands = onItsPlace(one, one.placed.at!, ground.map);
    const hull = onCloth(stands.extent.hull, stands.spot);
    const kept = ground.keepClear.find(({ area }) =>
      area.rings.some((ring) => nearer(hull, ring, dressing.gap)),
    );
    if (kept) {
      findings.push(inKeptArea(one, kept));
      continue;
    }
    findings.push(...offBlock(one.name, hull, ground.map));
    places.take(hull);
    standing.set(one, stands);
  }
  for (const one of asked) {
    if (!one.patch) continue;
    const circle = places.circleIn(one.patch);
    const theta = thetaOf(one.placed, () => null);
    const stands = circle && standIn(circle, one.patch, one.figure, one.passes, theta);
    if (!stands) {
      findings.push(noRoom(one, one.patch, 2 * (circle?.radius ?? 0)));
      continue;
    }
    if (stands.scale < 1) findings.push(madeSmaller(one, one.patch, stands));
    places.take(onCloth(stands.extent.hull, stands.spot));
    standing.set(one, stands);
  }
  return {
    layers: asked.flatMap((one) => {
      const stands = standing.get(one);
      return stands ? layersOf(dressing, one, stands) : [];
    }),
    findings,
  };
}

function askedOrnament(
  placed: PlacedOrnament,
  k: number,
  dressing: Dressing,
  dictionary: Dictionary,
  map: SeamMap,
): AskedOrnament {
  const ornament = ornamentNamed(dictionary, placed.ornament);
  const patch = placed.patch === undefined ? null : patchNamed(map, placed.patch);
  if (placed.patch !== undefined && !patch) {
    const wrong =
      typeof placed.patch === 'number'
        ? `there is no patch ${placed.patch}`
        : `there is no patch at ${placed.patch.at.join(', ')}`;
    const { length } = map.patches;
    throw new InputError(
      'unknown-patch',
      '',
      wrong,
      length ? `its patches are 1 to ${length}` : 'the block has none',
    );
  }
  return {
    placed,
    name: `ornament ${k + 1} (${ornament.title.toLowerCase()})`,
    ornament,
    figure: sizedOrnament(ornament, placed.parameters),
    passes: passesIn(dressing, placed),
    patch,
  };
}

/** As asked for; what `lying` gives where it is to be turned to fit. */
const thetaOf = <T>({ turn = 0 }: PlacedOrnament, lying: () => T): number | T =>
  turn === 'fit' ? lying() : (-turn * Math.PI) / 180;

function onItsPlace({ placed, figure, passes }: AskedOrnament, [x, y]: Point, map: SeamMap): Standing {
  const extent: Extent = extentOf(figure.build(1), passes);
  const patch = patchNamed(map, { at: [x, y] });
  const theta = thetaOf(placed, () =>
    patch ? alongCloth(extent, longWay([patch.boundary, ...patch.holes])) : 0,
  );
  return { spot: { x, y, theta }, scale: 1, extent };
}

function layersOf(
  dressing: Dressing,
  one: AskedOrnament,
  { spot, scale }: { spot: Spot; scale: number },
): OrnamentLayer[] {
  const { placed, ornament, figure, passes } = one;
  const unit = figure.build(scale);
  const whole = ornamentChain(unit, spot, passes);
  return ornament.threads.map((name, thread) => ({
    ornament: dressing.ornaments!.indexOf(placed),
    nth: thread,
    title: withThread(ornament.title, name),
    thread: threadOf(dressing, placed, thread),
    spread: spreadIn(dressing, placed, thread),
    chain: ofOneThread(whole, threadsByClass(unit), thread),
  }));
}
