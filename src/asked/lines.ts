import type { SeamMap } from '../block/seam-map.js';
import { type Finding, lineName } from '../finding.js';
import type { FollowerAsk, LineAsk } from '../fit/ask.js';
import { unevenness } from '../fit/by-hand.js';
import { mannerAsked } from '../fit/manner.js';
import { CREST, rowsOf, wholeReach } from '../fit/rows.js';
import { resized, seamOf } from '../fit/seam-reference.js';
import { type Sized, sized } from '../fit/sized.js';
import { onSeam } from '../fit/turned-round.js';
import type { Waves } from '../fit/waves.js';
import type { CornerManner, Dressing, Guide, Row, Treatment } from '../formats/dressing.js';
import type { KeptArea } from '../formats/line-drawing.js';
import { InputError } from '../input-error.js';
import { largerFor } from '../needle/craft.js';
import type { Dictionary } from '../stitches/dictionary.js';
import { nearestName } from '../stitches/nearest-name.js';
import { accentAsk } from './accent-ask.js';
import { passesIn } from './heaviness.js';
import { checkStep, leadingAll } from './in-step.js';
import { Slips, within } from './slips.js';
import type { Threaded } from './threads.js';

/** On a trimmed block an edge stays this far inside, mm. Common practice. */
const EDGE_INSIDE = 0.7;
/** A treatment of the dressing, ready to be fitted. */
export interface AskedLine {
  /** index into dressing.treatments */
  readonly treatment: number;
  readonly ask: LineAsk;
}

/**
 * What the dressing asks, line by line; a treatment whose seam is no longer there becomes a finding.
 * @throws InputError that tells every treatment that asks for what there is not
 */
export function askedLines(
  map: SeamMap,
  dressing: Dressing,
  dictionary: Dictionary,
  keepClear: readonly KeptArea[] = [],
): { lines: AskedLine[]; findings: Finding[] } {
  const references = resized(
    map,
    dressing.treatments.map(({ seam }) => seam),
  );
  const findings: Finding[] = [];
  const slips = new Slips();
  const taken = new Map<number | 'outline', number>();
  const sizes: Sizes = new Map();
  const lines = dressing.treatments.flatMap((treatment, t): AskedLine[] => {
    const seam = seamOf(map, references[t]);
    const where = `treatment ${t + 1}`;
    const name = lineName(treatment.seam.id);
    if (seam === null) {
      findings.push({
        level: 'error',
        code: 'lost-treatment',
        message: `${where} was made for ${name}, which is not in this block; give it the number of another seam`,
        at: treatment.seam.middle ?? undefined,
      });
      return [];
    }
    const id = seam === 'outline' ? seam : seam.id;
    return slips.caught((): AskedLine[] => {
      if (taken.has(id)) {
        throw new InputError(
          'seam-twice',
          where,
          `${name} already has treatment ${taken.get(id)! + 1}`,
          'give each seam one treatment',
          ['treatments', t],
        );
      }
      taken.set(id, t);
      const ask = askedLine(map, dressing, dictionary, onSeam(treatment, references[t], seam), t, id, sizes);
      return [{ treatment: t, ask: keepClear.length > 0 ? { ...ask, keepClear } : ask }];
    });
  });
  slips.tell();
  return { lines, findings };
}

function askedLine(
  map: SeamMap,
  dressing: Dressing,
  dictionary: Dictionary,
  treatment: Treatment,
  t: number,
  seam: number | 'outline',
  sizes: Sizes,
): LineAsk {
  const where = `treatment ${t + 1}`;
  const side = sideAsked(map, treatment, seam);
  const other = side === 'left' ? 'right' : 'left';
  const turned = isTurnedOver(map, treatment, seam) ? -1 : 1;
  const sizedRows = treatment.rows.map((row, r) =>
    within(`${where} row ${r + 1}`, ['treatments', t, 'rows', r], () =>
      sizedRow(dictionary, row, treatment.corner, heaviest(dressing, row), sizes),
    ),
  );
  const followers = treatment.rows.slice(1).map((row, k): FollowerAsk => {
    const { flip = false, times = 1, step = 0 } = row;
    within(`${where} row ${k + 2}`, ['treatments', t, 'rows', k + 1], () =>
      checkStep(sizedRows[0], sizedRows[k + 1], times),
    );
    return {
      sized: sizedRows[k + 1],
      side: flip ? other : side,
      passes: passesIn(dressing, row),
      offset: turned * row.offset,
      times,
      step,
      mirrored: treatment.guide?.shape === 'interlace' && k % 2 === 0,
    };
  });
  const accents = (treatment.accents ?? []).map((accent, k) =>
    within(`${where} accent ${k + 1}`, ['treatments', t, 'accents', k], () =>
      accentAsk(
        dictionary,
        accent,
        sizedRows,
        treatment.guide ? [CREST] : [],
        passesIn(dressing, accent),
        heaviest(dressing, accent),
      ),
    ),
  );
  const [first] = treatment.rows;
  const ask: LineAsk = {
    seam,
    sized: leadingAll(sizedRows[0], followers),
    side: first.flip ? other : side,
    reverse: treatment.reverse,
    manner: mannerAsked(treatment.ends, dressing.ends),
    shortOf: new Set(),
    passes: passesIn(dressing, first),
    offset: turned * first.offset,
    followers,
    accents,
    laid: treatment.laid?.width ?? 0,
    // every line is uneven in its own way, whatever else is dressed
    waves: wavesOf(treatment.guide),
    ...(treatment.corner === 'round' && { keepsRound: true }),
    uneven: unevenness(dressing.byHand ?? 0, 1000 * dressing.seed + (seam === 'outline' ? 0 : seam)),
  };
  if (seam !== 'outline') return ask;
  // The outline runs clockwise, cloth to the right: an edge is moved in until nothing of it lies outside.
  const { left } = wholeReach(rowsOf(ask, false), 1, ask.sized.repeat);
  const inward = left + (dressing.outline === 'trim' ? EDGE_INSIDE : 0);
  return {
    ...ask,
    offset: ask.offset - inward,
    followers: followers.map((row) => ({ ...row, offset: row.offset - inward })),
  };
}

/** To which hand of its line a treatment stands. */
export const sideAsked = (map: SeamMap, { side }: Treatment, seam: number | 'outline'): 'left' | 'right' =>
  side ?? (seam === 'outline' ? 'right' : roomierSide(map, seam));

/** Where nobody says on which side it stands, the whole treatment is turned over with its arms: rows on the left lie right. */
export const isTurnedOver = (map: SeamMap, treatment: Treatment, seam: number | 'outline'): boolean =>
  treatment.side === null && seam !== 'outline' && sideAsked(map, treatment, seam) === 'right';

/** Two interlaced lines are waves and their mirror image. */
const wavesOf = (guide: Guide | null | undefined): Waves | undefined =>
  guide ? { ...guide, shape: guide.shape === 'interlace' ? 'wave' : guide.shape } : undefined;

/** By how much the thickest of its threads makes the smallest good size larger than in No. 40. */
const heaviest = ({ threads }: Dressing, { thread, moreThreads = [] }: Threaded): number =>
  Math.max(...[thread, ...moreThreads].map((index) => largerFor(threads[index].weight)));

/** Stitches at the sizes that rows ask for: rows that ask the same share one, and what is built of it. */
type Sizes = Map<string, Sized>;

/** A row's stitch at its sizes. Sizes out of range are refused here, before anything is fitted. */
function sizedRow(
  { stitches }: Dictionary,
  row: Row,
  corner: CornerManner | undefined,
  larger: number,
  sizes: Sizes,
): Sized {
  const key = JSON.stringify([row.stitch, corner, larger, Object.entries(row.parameters)]);
  const known = sizes.get(key);
  if (known) return known;
  const stitch = stitches.get(row.stitch);
  if (!stitch) {
    throw new InputError(
      'unknown-stitch',
      '',
      `there is no stitch "${row.stitch}"`,
      `did you mean "${nearestName(row.stitch, [...stitches.keys()])}"?`,
    );
  }
  const at = sized(corner ? { ...stitch, corner } : stitch, row.parameters, larger);
  at.build(1, at.repeat);
  sizes.set(key, at);
  return at;
}

/** One-sided stitches stand on the larger patch, where there is more room, when nothing says which was sewn later. */
function roomierSide(map: SeamMap, seam: number): 'left' | 'right' {
  const areas = { left: 0, right: 0 };
  for (const { from, to, left, right } of map.seams[seam - 1].sides) {
    if (left !== null) areas.left += (to - from) * map.patches[left - 1].area;
    if (right !== null) areas.right += (to - from) * map.patches[right - 1].area;
  }
  return areas.right > areas.left ? 'right' : 'left';
}
