import { checkSeam } from '../block/known-seams.js';
import type { LineId } from '../block/meetings.js';
import { meetingsAmong } from '../block/meetings.js';
import type { SeamMap } from '../block/seam-map.js';
import type { Finding } from '../finding.js';
import { referenceTo } from '../fit/seam-reference.js';
import type { Dressing, ThreadChoice, Treatment } from '../formats/dressing.js';
import type { KeptArea } from '../formats/line-drawing.js';
import { InputError } from '../input-error.js';
import type { Dictionary } from '../stitches/dictionary.js';
import { clashFindings } from './clash-findings.js';
import { type Kept, keptOrnaments, keptTreatments, linesLeftBare } from './kept.js';
import { type Offer, scaledWork } from './offer.js';
import { offerNamed, offersOf } from './offers.js';
import { chosenOrnaments, inPalette } from './ornament-choice.js';
import { type SeamFacts, seamFacts } from './seam-facts.js';
import { stitchesOfSeams } from './stitch-choice.js';
import { threadOrder, threadsFrom, threadsOfSeams } from './thread-choice.js';
import { rethreaded, ThreadList, workRethreaded } from './threading.js';
import { reasonsOf, stayReason } from './why.js';

export interface MixOptions {
  /** the same seed gives the same block */
  readonly seed: number;
  /** how many threads of the palette; without it those that the dressing has */
  readonly threads?: number;
  /** a thread that is among them in any case */
  readonly first?: ThreadChoice;
  /** a maker's own threads, from which the palette is taken instead of the built-in one */
  readonly stash?: readonly ThreadChoice[];
  /** a stitch or saved treatment that a seam has in any case */
  readonly pins?: readonly Pin[];
  /** seams to mix; otherwise all. The treatments of others stay, and so do all ornaments */
  readonly seams?: readonly number[];
  /** the dressing holds nothing but what was asked for just now, so that its ornaments take threads of the palette */
  readonly isNew?: boolean;
  /** where no ornament is to stand */
  readonly keepClear?: readonly KeptArea[];
}

export interface Pin {
  readonly seam: number;
  /** of a stitch or a saved treatment */
  readonly name: string;
}

/** A dressed block, and why each seam got what it got. */
export interface Mixed {
  readonly dressing: Dressing;
  readonly why: ReadonlyMap<LineId, string>;
  readonly findings: readonly Finding[];
}

/**
 * Dresses a block from the library: no two treatments that meet share a stitch, as far as the library goes. Of the
 * dressing given, what is pinned and the outline's treatment stay; its other treatments and ornaments are replaced.
 * Pure: the same input gives the same dressing.
 * @throws InputError when a pin names a seam, stitch or treatment that there is not, or the library is empty
 */
export function mixDressing(
  map: SeamMap,
  base: Dressing,
  dictionary: Dictionary,
  options: MixOptions,
): Mixed {
  const { seed } = options;
  const pinned = pinnedOffers(map, dictionary, options.pins ?? []);
  const kept = keptTreatments(map, base, pinned, dictionary, options.seams);
  const left = linesLeftBare(map, base);
  const seams = openSeams(map, options.seams, pinned, [...kept.map(({ line }) => line), ...left]);
  const library = offersOf(dictionary);
  if (library.length === 0 && seams.length > pinned.size) {
    throw new InputError('empty-library', '--mix', 'the library has no stitches', 'add some to it');
  }
  const here = kept.filter((one): one is Kept & { line: LineId } => one.line !== null);
  const lines: LineId[] = [...seams.map(({ id }) => id), ...here.map(({ line }) => line)];
  const neighbors = meetingsAmong(map, lines);
  const settled = lines.map((line, i) =>
    i < seams.length ? pinned.get(line as number) : here[i - seams.length].offer,
  );
  const choice = stitchesOfSeams({ seams, lines, neighbors, library, settled, seed });

  const palette =
    options.threads === undefined
      ? base.threads
      : threadsFrom(options.threads, seams, seed, options.first, options.stash);
  const among = neighbors.slice(0, seams.length).map((near) => near.filter((other) => other < seams.length));
  const main = threadsOfSeams(palette, seams, among, seed);
  const threads = new ThreadList(palette);
  const mixed = seams.map((facts, i): Treatment => {
    const order = threadOrder(palette, main[i], facts, seed);
    const work = scaledWork(choice.offers[i], choice.suits[i].scale, dictionary);
    return {
      seam: referenceTo(map.seams[facts.id - 1]),
      ...workRethreaded(work, (thread) => order[thread % order.length]),
      ends: null,
      side: null,
      reverse: false,
      ...(pinned.has(facts.id) && { pinned: true }),
    };
  });
  const again = (thread: number) => threads.place(base.threads[thread]);
  const stayed = kept.map(({ treatment }) => ({ ...treatment, ...workRethreaded(treatment, again) }));
  const isPart = options.seams !== undefined && !options.isNew;
  const standing = isPart ? (base.ornaments ?? []) : keptOrnaments(base);
  const placed = standing.map((one) =>
    options.isNew ? inPalette(one, map, dictionary, palette, seed) : rethreaded(one, again),
  );
  const widths = new Map(lines.map((line, i) => [line, choice.suits[i]?.width ?? choice.offers[i].width]));
  const { keepClear = [] } = options;
  const more = isPart
    ? []
    : chosenOrnaments({ map, dictionary, widths, palette, kept: placed, seed, keepClear });
  const ornaments = [...placed, ...more];
  return {
    dressing: {
      ...base,
      ...(base.bare && { bare: base.bare.filter((_, k) => !pinned.has(left[k] as number)) }),
      treatments: [...mixed, ...stayed].sort((a, b) => rank(a) - rank(b)),
      ornaments: ornaments.length ? ornaments : undefined,
      threads: threads.list,
      seed,
    },
    why: new Map([
      ...reasonsOf({ lines, neighbors, seams, choice, pinned, palette, main }),
      ...here.map(({ line, treatment }): [LineId, string] => [line, stayReason(line, treatment)]),
    ]),
    findings: clashFindings(map, lines, choice, new Set([...pinned.keys(), ...here.map(({ line }) => line)])),
  };
}

const rank = ({ seam: { id } }: Treatment): number => (id === 'outline' ? Number.POSITIVE_INFINITY : id);

/** The offers that pins name, by seam. */
function pinnedOffers(map: SeamMap, dictionary: Dictionary, pins: readonly Pin[]): Map<number, Offer> {
  const pinned = new Map<number, Offer>();
  for (const { seam, name } of pins) {
    const where = `--pin ${seam}=${name}`;
    checkSeam(map, seam, where);
    if (pinned.has(seam)) {
      throw new InputError('pinned-twice', where, `seam ${seam} is pinned twice`, 'pin it once');
    }
    pinned.set(seam, offerNamed(dictionary, name, where));
  }
  return pinned;
}

/** The seams that get something: those asked for, and those that are pinned. */
function openSeams(
  map: SeamMap,
  asked: readonly number[] | undefined,
  pinned: ReadonlyMap<number, Offer>,
  others: readonly (LineId | null)[],
): SeamFacts[] {
  for (const id of asked ?? []) checkSeam(map, id, `--seam ${id}`);
  const wanted = asked && new Set(asked);
  const taken = new Set(others);
  return map.seams
    .filter(({ id }) => pinned.has(id) || ((!wanted || wanted.has(id)) && !taken.has(id)))
    .map((seam) => seamFacts(map, seam));
}
