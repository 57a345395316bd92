import { buildSeamMap } from '../block/build-seam-map.js';
import type { SeamMap } from '../block/seam-map.js';
import type { LineAsk } from '../fit/ask.js';
import type { Chain } from '../fit/fit.js';
import { fitLines } from '../fit/fit-lines.js';
import { ofOneThread, threadsByClass } from '../fit/one-thread.js';
import { ornamentChain } from '../fit/place-ornament.js';
import { SHARE_OF_DISC } from '../fit/reach.js';
import { reachOf, sized } from '../fit/sized.js';
import { noise } from '../geometry/noise.js';
import { InputError } from '../input-error.js';
import { craftFor, largerFor, threadWidth } from '../needle/craft.js';
import type { Craft } from '../needle/run.js';
import { sewChains, Workbench } from '../needle/sew-chain.js';
import type { Figure, Ornament, Parameter, Stitch, Values } from '../stitches/stitch.js';
import { legGaps } from './leg-gaps.js';
import { sewnFaults } from './sewn-faults.js';

/** A fault of a stitch or an ornament, with the first sizes it was found at. */
export interface SanityFault {
  /** a mistake of the file, or worth knowing */
  readonly level: 'wrong' | 'note';
  readonly what: string;
  readonly right: string;
  readonly at: string;
}

/** Threads that a stitch may be sewn with. */
const WEIGHTS = ['No. 60', 'No. 40', 'No. 30', 'No. 12'] as const;
/** Values looked at beside the ends of the ranges. */
const RANDOM_SIZES = 10;
const REPEATS = 6;
/** Seams of a block are mostly 30 to 70 mm long and bend: what reaches further from them finds no room, mm. Common practice. */
const FAR = 20;
const PASSES = 3;

/**
 * How a stitch sews over the whole range of its parameters: straight, on the tightest curve that its reach allows, round
 * a right-angle corner, and at its smallest good size with every weight of thread. Empty when all is well.
 */
export function stitchFaults(stitch: Stitch): SanityFault[] {
  const faults = new Faults();
  faults.within({}, () => {
    const { left, right } = reachOf(stitch.build({}), stitch.symmetry === 'glide', 1);
    const reach = Math.max(left, right);
    if (reach <= FAR) return;
    const what = `it reaches ${reach.toFixed(1)} mm from the seam, for which few seams of a block have room`;
    faults.add(what, `its furthest points within ${FAR} mm`, {}, 'note');
  });
  for (const values of sampleValues(stitch)) {
    faults.within(values, () => {
      const ask = askOf(stitch, values);
      for (const [where, map] of Object.entries(sampleLines(stitch, ask))) {
        const [{ fit, findings }] = fitLines(map, [ask], { gap: 0.6, outline: 'free' });
        const chains = fit.layers.map((layer) => layer.chains);
        if (chains.flat().length === 0) {
          faults.add(`nothing of it is left ${where}`, 'a shape that can be worked there', values);
          continue;
        }
        if (findings.some(({ code }) => code === 'tight-bend')) {
          faults.add(`it leaves part of the line bare ${where}`, 'less width, or a longer repeat', values);
        }
        faults.sewn(chains, craftFor('No. 40'), where, values);
      }
    });
  }
  smallestFaults(stitch, faults, (values, weight, where) => {
    const ask = askOf(stitch, values);
    const [{ fit }] = fitLines(straight(ask), [ask], { gap: 0.6, outline: 'free' });
    const chains = fit.layers.map((layer) => layer.chains);
    faults.sewn(chains, craftFor(weight), where, values);
  });
  return faults.list();
}

/** How an ornament sews over the whole range of its parameters. */
export function ornamentFaults(ornament: Ornament): SanityFault[] {
  const faults = new Faults();
  const sewnAs = (values: Values, weight: string, where: string) => {
    const unit = ornament.build(values);
    const whole = ornamentChain(unit, { x: 0, y: 0, theta: 0 }, PASSES);
    const chains = ornament.threads.map((_, thread) => [ofOneThread(whole, threadsByClass(unit), thread)]);
    faults.sewn(chains, craftFor(weight), where, values);
  };
  for (const values of sampleValues(ornament)) {
    faults.within(values, () => sewnAs(values, 'No. 40', 'as it stands'));
  }
  smallestFaults(ornament, faults, (values, weight, where) => sewnAs(values, weight, where));
  return faults.list();
}

/**
 * The smallest good size is stated for No. 40; in a thicker thread it grows with the thread. At that size it sews, and legs
 * that stand apart at the usual size still do.
 */
function smallestFaults(
  figure: Stitch | Ornament,
  faults: Faults,
  sewnAs: (values: Values, weight: string, where: string) => void,
): void {
  const glide = 'symmetry' in figure && figure.symmetry === 'glide';
  const usual = legGaps(figure.build({}), glide);
  for (const weight of WEIGHTS) {
    const larger = largerFor(weight);
    const values = Object.fromEntries(
      Object.entries(figure.smallest).map(([name, size]) => {
        const { min, max } = figure.parameters.find((one) => one.name === name)!;
        return [name, Math.min(max, Math.max(min, size * larger))];
      }),
    );
    const where = `at its smallest size in ${weight}`;
    faults.within(values, () => {
      sewnAs(values, weight, where);
      const [[legs, apart] = ['', Number.POSITIVE_INFINITY]] = [...legGaps(figure.build(values), glide)]
        .filter(([names]) => usual.get(names)! > threadWidth('No. 40'))
        .sort((a, b) => a[1] - b[1]);
      if (apart >= threadWidth(weight)) return;
      const what = `${legs} come as near as ${apart.toFixed(2)} mm ${where}`;
      faults.add(what, `at least ${threadWidth(weight)} mm, the width of that thread`, values);
    });
  }
}

function askOf(stitch: Stitch, values: Values): LineAsk {
  return {
    seam: 1,
    sized: sized(stitch, values),
    side: 'left',
    reverse: false,
    manner: 'tuck',
    shortOf: new Set(),
    passes: PASSES,
    offset: 0,
    followers: [],
    accents: [],
    laid: 0,
  };
}

function sampleLines(stitch: Stitch, ask: LineAsk): Record<string, SeamMap> {
  const { repeat } = ask.sized;
  const { left, right } = reachOf(ask.sized.build(1, repeat), true, 1);
  const long = REPEATS * repeat;
  // half round, it holds a few repeats
  const radius = Math.max(Math.max(left, right, 0.5) / SHARE_OF_DISC + 0.5, (3 * repeat) / Math.PI);
  const arc = Array.from({ length: 49 }, (_, i): [number, number] => {
    const angle = (Math.min(Math.PI, long / radius) * i) / 48;
    return [200 + radius * Math.sin(angle), 200 - radius * Math.cos(angle)];
  });
  const side = long + 2 * Math.max(left, right);
  const lines: Record<string, SeamMap> = {
    'on a straight line': straight(ask),
    'on its tightest curve': mapOf(arc),
  };
  if (stitch.corner !== 'break') {
    lines['round a right angle'] = mapOf([
      [200, 200],
      [200 + side, 200],
      [200 + side, 200 + side],
    ]);
  }
  return lines;
}

const straight = ({ sized: { repeat } }: LineAsk): SeamMap =>
  mapOf([
    [200, 200],
    [200 + REPEATS * repeat, 200],
  ]);

const mapOf = (points: readonly (readonly [number, number])[]): SeamMap =>
  buildSeamMap({
    width: 800,
    height: 800,
    origin: [0, 0],
    lines: [{ points: Float64Array.from(points.flat()), closed: false, fill: null, where: 'sample' }],
  }).map;

/** The defaults, every parameter at its ends, and sizes at random over all ranges: the same ones every time. */
function sampleValues({ parameters }: Figure): Values[] {
  const within = ({ unit, min, max }: Parameter, share: number) => {
    const value = min + (max - min) * share;
    return unit === 'count' ? Math.round(value) : value;
  };
  return [
    {},
    ...parameters.flatMap(({ name, min, max }) => [{ [name]: min }, { [name]: max }]),
    ...Array.from({ length: RANDOM_SIZES }, (_, k) =>
      Object.fromEntries(
        parameters.map((parameter, i) => [parameter.name, within(parameter, (1 + noise(k, i)) / 2)]),
      ),
    ),
  ];
}

/** Faults found so far, each kind once. */
class Faults {
  private readonly found = new Map<string, SanityFault>();
  private readonly bench = new Workbench();

  add(what: string, right: string, values: Values, level: SanityFault['level'] = 'wrong'): void {
    // one size tells enough: numbers aside, the same fault is told once
    const kind = what.replace(/[\d.]+/g, '');
    if (!this.found.has(kind))
      this.found.set(kind, { level, what, right, at: JSON.stringify(shown(values)) });
  }

  /** Runs a check; what the file's own arithmetic refuses is a fault of the file. */
  within(values: Values, check: () => void): void {
    try {
      check();
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      this.add(`${error.where}: ${error.wrong}`, error.right, values);
    }
  }

  sewn(threads: readonly (readonly Chain[])[], craft: Craft, where: string, values: Values): void {
    for (const chains of threads) {
      const isKnots = chains.every(({ kind }) => kind.every((one) => one === 'knot' || one === 'under'));
      for (const fault of sewnFaults(sewChains(chains, craft, this.bench).runs, craft, isKnots)) {
        this.add(`${fault.what} ${where}`, fault.right, values, fault.mild ? 'note' : 'wrong');
      }
    }
  }

  list = (): SanityFault[] => [...this.found.values()];
}

const shown = (values: Values): Values =>
  Object.fromEntries(Object.entries(values).map(([name, value]) => [name, Math.round(value * 100) / 100]));
