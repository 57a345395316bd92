import type { LineId } from '../block/meetings.js';
import type { ThreadChoice, Treatment } from '../formats/dressing.js';
import type { Offer } from './offer.js';
import type { SeamFacts } from './seam-facts.js';
import { wantedWidth } from './seam-facts.js';
import type { StitchChoice } from './stitch-choice.js';
import type { Suit } from './suiting.js';
import { meltsIntoBoth, meltsIntoOne } from './thread-choice.js';

/** Seams up to here are called short, from here on long, mm. */
const SHORT = 40;
const LONG = 80;
/** A treatment is called wide or small when it is so within this factor of what suits such seams. */
const NEARLY = 1.2;

interface Mixture {
  readonly lines: readonly LineId[];
  readonly neighbors: readonly (readonly number[])[];
  readonly seams: readonly SeamFacts[];
  readonly choice: StitchChoice;
  readonly pinned: ReadonlyMap<number, Offer>;
  readonly palette: readonly ThreadChoice[];
  /** for each seam its place in the palette */
  readonly main: ArrayLike<number>;
}

/** Why a line keeps what it had, a plain phrase. */
export function stayReason(line: LineId, { pinned }: Pick<Treatment, 'pinned'>): string {
  if (line === 'outline') return 'the edge, as asked';
  return pinned ? 'pinned in the dressing' : 'as it was: only other seams are mixed';
}

/** Why each seam got what it got, a plain phrase. */
export function reasonsOf({
  lines,
  neighbors,
  seams,
  choice,
  pinned,
  palette,
  main,
}: Mixture): Map<LineId, string> {
  const { offers, suits, clashes } = choice;
  const isRich = (i: number) => offers[i].accents.length > 0;
  const families = new Map<string, number>();
  for (const { family } of offers) families.set(family, (families.get(family) ?? 0) + 1);
  return new Map(
    lines.slice(0, seams.length).map((line, i): [LineId, string] => {
      const against = clashes.flatMap((pair) =>
        pair.includes(i) ? pair.filter((other) => other !== i) : [],
      );
      const phrases = [
        pinned.has(seams[i].id) ? 'pinned' : '',
        sizeReason(seams[i], suits[i]),
        meetingReason(
          neighbors[i].map((k) => lines[k]),
          against.map((k) => lines[k]),
        ),
        families.get(offers[i].family) === 1 ? `the only one of the ${offers[i].family} family` : '',
        accentReason(isRich(i), neighbors[i].some(isRich)),
        threadReason(palette, main[i], seams[i]),
      ];
      return [line, `${offers[i].title}: ${phrases.filter((phrase) => phrase !== '').join('; ')}`];
    }),
  );
}

function sizeReason({ length, wanted }: SeamFacts, { width }: Suit): string {
  const mm = `${Math.round(length)} mm`;
  const wide = `${width.toFixed(1)} mm`;
  if (wanted < 0.9 * wantedWidth(length) && width <= NEARLY * wanted)
    return `${wide} wide, to leave the narrow patch beside it some cloth`;
  if (length >= LONG && width >= wantedWidth(LONG) / NEARLY) return `wide (${wide}) on a long seam (${mm})`;
  if (length <= SHORT && width <= NEARLY * wantedWidth(SHORT))
    return `small (${wide}) on a short seam (${mm})`;
  return `${wide} wide on ${mm}`;
}

function meetingReason(meets: readonly LineId[], clashing: readonly LineId[]): string {
  if (clashing.length > 0) return `shares a stitch with ${spoken(clashing)} for want of others`;
  return meets.length > 0 ? `shares no stitch with ${spoken(meets)}` : 'meets no other';
}

function accentReason(rich: boolean, richNeighbors: boolean): string {
  if (rich) return richNeighbors ? 'with accents' : 'with accents, since what it meets has none';
  return richNeighbors ? 'plain beside accents' : '';
}

function threadReason(palette: readonly ThreadChoice[], main: number, seam: SeamFacts): string {
  const name = palette[main].name.toLowerCase();
  if (meltsIntoBoth(palette[main], seam)) return `${name} hardly shows on its fabrics`;
  if (palette.length === 1) return '';
  return meltsIntoOne(palette[main], seam)
    ? `${name} shows on one of its fabrics`
    : `${name} shows on its fabrics`;
}

/** 'seams 1, 4 and 7 and the outline' */
function spoken(lines: readonly LineId[]): string {
  const numbers = lines.filter((line) => line !== 'outline').sort((a, b) => a - b);
  const seams =
    numbers.length > 1
      ? [`seams ${numbers.slice(0, -1).join(', ')} and ${numbers[numbers.length - 1]}`]
      : numbers.map((number) => `seam ${number}`);
  return [...seams, ...(lines.includes('outline') ? ['the outline'] : [])].join(' and ');
}
