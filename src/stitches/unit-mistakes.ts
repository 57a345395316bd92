import { InputError } from '../input-error.js';
import { UnitError } from './build.js';
import { LONGEST_FIT, SHORTEST_FIT } from './compile.js';
import type { Mistake } from './mistake.js';
import { isOnePiece } from './one-piece.js';
import type { Figure, Stitch, Unit, Values } from './stitch.js';

/** Shortest visible leg that is a stitch at all, in mm. */
const SHORTEST_LEG = 0.3;

/**
 * Builds units over the ranges of the parameters and looks at each. The first mistake of a kind is enough, and one of
 * what is copied stands for all copies.
 */
export function unitMistakes<F extends Figure>(
  figure: F,
  mistakesOf: (figure: F, unit: Unit) => Iterable<Mistake>,
): Mistake[] {
  const mistakes = new Map<string, Mistake>();
  const add = (kind: string, mistake: Mistake) => {
    const key = kind.replace(/\[\d+\]/g, '[]');
    if (!mistakes.has(key)) mistakes.set(key, mistake);
  };
  for (const values of sampleValues(figure)) {
    const at = Object.keys(values).length ? ` (at ${JSON.stringify(values)})` : '';
    try {
      for (const mistake of mistakesOf(figure, figure.build(values))) {
        add(mistake.place + mistake.right, { ...mistake, wrong: mistake.wrong + at });
      }
    } catch (error) {
      if (error instanceof UnitError) {
        for (const mistake of error.mistakes) add(mistake.place, { ...mistake, wrong: mistake.wrong + at });
      } else if (error instanceof InputError) {
        const { where, wrong, right } = error;
        const place = where.startsWith(figure.name) ? where.slice(figure.name.length).trim() : where;
        add(place, { place, wrong, right });
      } else throw error;
    }
  }
  return [...mistakes.values()];
}

/** The defaults, each parameter at its ends, all of them at theirs, and repeats as short and long as a fit makes them. */
function sampleValues({ parameters }: Figure): Values[] {
  const ends = (end: 'min' | 'max') =>
    Object.fromEntries(parameters.map((parameter) => [parameter.name, parameter[end]]));
  const usual = parameters.find((parameter) => parameter.name === 'repeat')?.default;
  return [
    {},
    ...parameters.flatMap(({ name, min, max }) => [{ [name]: min }, { [name]: max }]),
    ends('min'),
    ends('max'),
    ...(usual === undefined ? [] : [{ repeat: usual * SHORTEST_FIT }, { repeat: usual * LONGEST_FIT }]),
  ];
}

export function* shortLegs(unit: Unit): Generator<Mistake> {
  for (const leg of [...unit.legs, ...unit.ending]) {
    if (leg.kind === 'knot' || leg.kind === 'under') continue;
    let long = 0;
    for (let i = 2; i < leg.path.length; i += 2) {
      long += Math.hypot(leg.path[i] - leg.path[i - 2], leg.path[i + 1] - leg.path[i - 1]);
    }
    if (long >= SHORTEST_LEG) continue;
    yield {
      place: `leg "${leg.name}"`,
      wrong: `it is ${long.toFixed(2)} mm long`,
      right: `at least ${SHORTEST_LEG} mm`,
    };
  }
}

export function* loosePieces({ threads }: Stitch, unit: Unit): Generator<Mistake> {
  for (let thread = 0; thread < threads.length; thread++) {
    if (isOnePiece(unit, thread)) continue;
    yield {
      place: 'legs',
      wrong: `a row of it falls into pieces${thread > 0 ? ` in its thread "${threads[thread]}"` : ''}`,
      right:
        'let legs share points, join units, add an "under" leg between the pieces, or say "detached": true',
      by: ['legs', 'threads', 'detached'],
    };
  }
}

export function mirrorsItself({ nodes }: Unit): boolean {
  const near = (u: number, v: number) => {
    for (let i = 0; i < nodes.length; i += 2)
      if (Math.hypot(nodes[i] - u, nodes[i + 1] - v) < 1e-6) return true;
    return false;
  };
  for (let i = 0; i < nodes.length; i += 2) if (!near(nodes[i], -nodes[i + 1])) return false;
  return true;
}
