import { askedLines } from './asked/lines.js';
import type { Block } from './block/block.js';
import { buildSeamMap } from './block/build-seam-map.js';
import type { Stop } from './design/design.js';
import { type Dressed, dress } from './dress.js';
import type { Finding } from './finding.js';
import { worstFirst } from './finding.js';
import { lineChain } from './fit/plain-line.js';
import { rowsOf, wholeReach } from './fit/rows.js';
import { referenceTo } from './fit/seam-reference.js';
import type { BlockSource, Dressing, Treatment } from './formats/dressing.js';
import { figureLines } from './geometry/figures.js';
import { fromPoints } from './geometry/polyline.js';
import { SNAP } from './geometry/tolerances.js';
import { craftFor } from './needle/craft.js';
import { sewChains, Workbench } from './needle/sew-chain.js';
import {
  SAMPLE_LINE,
  SAMPLE_NUMBER,
  SAMPLE_PITCH,
  type SamplerLayout,
  samplerLayout,
} from './sampler-layout.js';
import type { Dictionary } from './stitches/dictionary.js';

/** Clear cloth between treatments that are wider, mm. */
const CLEAR = 4;
/** Height of a number, mm. */
const FIGURE = 5;

/** What one line of a sampler shows. */
export interface Sample {
  /** the number sewn before it */
  readonly number: number;
  /** number of its line among the seams of the sampler */
  readonly line: number;
  /** of the dressing, where it is worked */
  readonly seams: readonly (number | 'outline')[];
}

export interface Sampler {
  readonly dressed: Dressed;
  readonly samples: readonly Sample[];
  /** the number of the last that the dressing has, sewn here or not */
  readonly last: number;
}

/**
 * Every treatment of a dressing once, on straight lines in one sewing field, numbered, each in stops of its own: sewn on
 * scrap before the block.
 *
 * @param from number of the first that is sewn; the field takes as many as it can
 */
export function samplerOf(dressing: Dressing, dictionary: Dictionary, from = 1): Sampler {
  const all = differentWorks(dressing.treatments);
  const rest = all.slice(from - 1);
  const reaches = rest.map(({ treatment }) => reachOf(treatment, dressing, dictionary));
  const layout = samplerLayout(
    rest.length,
    Math.max(SAMPLE_PITCH, ...reaches.map((reach) => 2 * reach + CLEAR)),
  );
  const shown = rest.slice(0, layout.places.length);
  const source: BlockSource = { file: 'sampler', stops: null, snap: SNAP, through: [] };
  const { map } = buildSeamMap({
    width: layout.width,
    height: layout.height,
    origin: [0, 0],
    lines: layout.places.slice(0, shown.length).map(([x, y], i) => ({
      points: fromPoints([
        [x, y],
        [x + SAMPLE_LINE, y],
      ]),
      closed: false,
      fill: null,
      where: `sample ${from + i}`,
    })),
  });
  const seamAt = ([x, y]: readonly [number, number]) =>
    map.seams.find(({ points }) => Math.hypot(points[0] - x, points[1] - y) < 1)!;
  const block: Block = { name: 'sampler', map, existing: null, stops: [], origin: [0, 0], findings: [] };
  // what is said of the block and its cloth is left behind
  const { format, version, ends, gap, threads, pull, seed, byHand, machine } = dressing;
  const dressed = dress(
    block,
    {
      ...{ format, version, ends, gap, threads, pull, seed, byHand, machine },
      block: source,
      outline: 'free',
      hoop: null,
      after: null,
      order: shown.map((_, i) => seamAt(layout.places[i]).id),
      treatments: shown.map(({ treatment }, i) => ({
        ...treatment,
        seam: referenceTo(seamAt(layout.places[i])),
        side: treatment.side ?? 'left',
        reverse: false,
      })),
    },
    dictionary,
  );
  const samples = shown.map(
    ({ seams }, i): Sample => ({ number: from + i, line: seamAt(layout.places[i]).id, seams }),
  );
  const numbers = numbersStop(samples, layout.places);
  const numbered = dressed.design.stops.map((stop): Stop => {
    const sample = samples.find(({ line }) => stop.seams.includes(line));
    return sample ? { ...stop, title: stop.title.replace(/seam \d+$/, `number ${sample.number}`) } : stop;
  });
  const design = { ...dressed.design, stops: [numbers, ...numbered] };
  const left = all.length - (from - 1) - shown.length;
  const findings = left > 0 ? [tooMany(samples, left)] : [];
  return {
    dressed: { ...dressed, design, findings: worstFirst([...dressed.findings, ...findings]) },
    samples,
    last: all.length,
  };
}

interface Work {
  readonly treatment: Treatment;
  readonly seams: readonly (number | 'outline')[];
}

/** Treatments that differ in more than the seam they are on, in the order of the dressing. */
function differentWorks(treatments: readonly Treatment[]): Work[] {
  const works = new Map<string, { treatment: Treatment; seams: (number | 'outline')[] }>();
  for (const treatment of treatments) {
    const { rows, accents, laid, guide } = treatment;
    const key = JSON.stringify([rows, accents ?? [], laid ?? null, guide ?? null]);
    const known = works.get(key) ?? { treatment, seams: [] };
    known.seams.push(treatment.seam.id);
    works.set(key, known);
  }
  return [...works.values()];
}

/** How far a treatment reaches from its line, accents included, mm. */
function reachOf(treatment: Treatment, dressing: Dressing, dictionary: Dictionary): number {
  const { map } = buildSeamMap({
    width: SAMPLE_LINE,
    height: 1,
    origin: [0, 0],
    lines: [
      {
        points: fromPoints([
          [0, 0],
          [SAMPLE_LINE, 0],
        ]),
        closed: false,
        fill: null,
        where: 'sample',
      },
    ],
  });
  const alone = { ...dressing, treatments: [{ ...treatment, seam: referenceTo(map.seams[0]) }] };
  const [{ ask }] = askedLines(map, alone, dictionary).lines;
  const { left, right } = wholeReach(rowsOf(ask, false), 1, ask.sized.repeat);
  return Math.max(left, right);
}

/** The numbers before the lines, in one stop that is sewn first. */
function numbersStop(samples: readonly Sample[], places: SamplerLayout['places']): Stop {
  const lines = samples.flatMap(({ number }, i) =>
    figureLines(number, places[i][0] - SAMPLE_NUMBER / 2 - 1, places[i][1], FIGURE),
  );
  const thread = { name: 'Any thread', hex: '#5a5a56', weight: 'No. 40' };
  const chains = lines.map((line) => lineChain([...line], false, 1));
  return {
    title: 'Numbers',
    kind: 'placement',
    seams: [],
    thread,
    runs: sewChains(chains, craftFor(thread.weight), new Workbench()).runs,
  };
}

function tooMany(samples: readonly Sample[], left: number): Finding {
  const next = samples[samples.length - 1].number + 1;
  const more = left === 1 ? 'one treatment more is' : `${left} treatments more are`;
  return {
    level: 'warning',
    code: 'sampler-full',
    message: `${more} in the dressing than one sewing field takes; --from ${next} sews on from there`,
  };
}
