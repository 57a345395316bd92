import { asObject, dictionaryJson } from '../formats/dictionary-json.js';
import { newerFile } from '../formats/newer-file.js';
import { errorsIn, firstOf, InputError } from '../input-error.js';
import { inFileOrder } from './file-order.js';
import { type Kind, ornamentKind, stitchKind } from './kinds.js';
import { eachOnce, type Mistake } from './mistake.js';
import { mistakeError } from './parse.js';
import { nameMistakes, parameterMistakes } from './record-mistakes.js';
import { shapeMistakes } from './shape-mistakes.js';
import { buildablePart, doubtsAfter, isDoubtful, soundPart } from './sound-parts.js';
import type { Figure, Ornament, Stitch } from './stitch.js';
import type { FigureRecord } from './stitch-record.js';
import { unitMistakes } from './unit-mistakes.js';

/**
 * A stitch from a file that nobody has checked: a maker's own. Slower to load than `parseStitch`, because it brings in
 * the schema library.
 * @throws InputError with the first mistake and the number of the others
 */
export async function readStitch(source: string | object, name: string, where = name): Promise<Stitch> {
  return sound(await examine(stitchKind, source, name, where), where);
}

/** An ornament, as `readStitch` reads a stitch. */
export async function readOrnament(source: string | object, name: string, where = name): Promise<Ornament> {
  return sound(await examine(ornamentKind, source, name, where), where);
}

/** Everything that is wrong with a stitch file, in its order, or the first of very much; empty when it is sound. */
export async function checkStitchFile(source: string | object, where: string): Promise<InputError[]> {
  return errorsOf(stitchKind, source, where);
}

/** Everything that is wrong with an ornament file, as `checkStitchFile` tells it. */
export async function checkOrnamentFile(source: string | object, where: string): Promise<InputError[]> {
  return errorsOf(ornamentKind, source, where);
}

interface Examined<F> {
  readonly figure: F | null;
  readonly mistakes: readonly Mistake[];
}

function sound<F>({ figure, mistakes }: Examined<F>, where: string): F {
  if (!figure || mistakes.length) throw mistakeError(where, mistakes);
  return figure;
}

async function errorsOf<R extends FigureRecord, F extends Figure>(
  kind: Kind<R, F>,
  source: string | object,
  where: string,
): Promise<InputError[]> {
  try {
    const { mistakes } = await examine(kind, source, where, where);
    return firstOf(mistakes, where, (mistake) => mistakeError(where, [mistake]));
  } catch (error) {
    if (error instanceof InputError) return [...errorsIn(error)];
    throw error;
  }
}

/**
 * Text, then form, then meaning, then the units it builds. What is wrong in one hides nothing in the next but what stands
 * on it: that is left out there.
 */
async function examine<R extends FigureRecord, F extends Figure>(
  kind: Kind<R, F>,
  source: string | object,
  name: string,
  where: string,
): Promise<Examined<F>> {
  const { value: json, mistakes: inText } =
    typeof source === 'string'
      ? await dictionaryJson(source, where, kind.what)
      : { value: asObject(source, where, kind.what), mistakes: [] };
  const { format } = json as { format?: unknown };
  if (typeof format === 'number' && format > FORMAT) throw newerFile(where, format, FORMAT);

  const inForm = await shapeMistakes(json, kind.schemas);
  const { file, doubts } = soundPart(json, inForm);
  const record = file as unknown as R;
  const meant: Mistake[] = [...parameterMistakes(record, kind.sizes), ...nameMistakes(record)];
  const figure = kind.from(record, name, meant);
  for (const doubt of doubtsAfter(file, meant)) doubts.add(doubt);
  const inMeaning = meant.filter((mistake) => !isDoubtful(mistake, doubts));

  const mistakes = [...inText, ...inForm, ...inMeaning];
  return {
    figure: mistakes.length ? null : figure,
    mistakes: inFileOrder(eachOnce([...mistakes, ...builtMistakes()]), json),
  };

  function builtMistakes(): Mistake[] {
    const part = buildablePart(file, meant, doubts);
    if (!part) return [];
    const left: Mistake[] = [];
    const built = mistakes.length ? kind.from(part.file as unknown as R, name, left) : figure;
    if (left.length) return [];
    return unitMistakes(built, kind.mistakesOf).filter((mistake) => !isDoubtful(mistake, part.doubts));
  }
}

/** The format of stitch and ornament files that is read here. */
const FORMAT = 1;
