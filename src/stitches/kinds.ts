import type { Mistake } from './mistake.js';
import { ornamentFrom, stitchFrom } from './parse.js';
import type { Figure, Ornament, Stitch, Unit } from './stitch.js';
import type { FigureRecord, OrnamentRecord, StitchRecord } from './stitch-record.js';
import { loosePieces, mirrorsItself, shortLegs } from './unit-mistakes.js';

/** The kinds of files in a dictionary, and what each is held to. */
export interface Kind<R extends FigureRecord, F extends Figure> {
  readonly schemas: 'stitch' | 'ornament';
  /** the object that a file is */
  readonly what: string;
  /** parameters every file has; each has a smallest good size */
  readonly sizes: readonly string[];
  readonly from: (record: R, name: string, mistakes: Mistake[]) => F;
  readonly mistakesOf: (figure: F, unit: Unit) => Iterable<Mistake>;
}

export const stitchKind: Kind<StitchRecord, Stitch> = {
  schemas: 'stitch',
  what: 'an object with "format", "title", "parameters", "points", "legs", ...: a stitch',
  sizes: ['repeat', 'width'],
  from: stitchFrom,
  *mistakesOf(stitch, unit) {
    yield* shortLegs(unit);
    if (!stitch.detached) yield* loosePieces(stitch, unit);
    if (stitch.symmetry === 'mirror' && !mirrorsItself(unit)) {
      yield {
        place: 'symmetry',
        wrong: 'its holes to the left and right differ',
        right: '"none", or holes that mirror',
        by: ['legs', 'symmetry'],
      };
    }
  },
};

export const ornamentKind: Kind<OrnamentRecord, Ornament> = {
  schemas: 'ornament',
  what: 'an object with "format", "title", "parameters", "points", "legs", ...: an ornament',
  sizes: ['size'],
  from: ornamentFrom,
  mistakesOf: (_, unit) => shortLegs(unit),
};
