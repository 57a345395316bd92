import { type FigureElement, readSvgFigure, type SvgFigure } from '../formats/svg-figure.js';
import { firstOf, InputError, InputErrors } from '../input-error.js';
import { checkStitchFile } from './check.js';
import { type DrawnLeg, drawnLegs } from './drawn-legs.js';
import { DrawnPoints } from './drawn-points.js';
import { isSeam, type SeamFrame, seamFrame } from './drawn-seam.js';
import { wordMistakes } from './drawn-words.js';
import { isOnePiece } from './one-piece.js';
import { stitchFrom } from './parse.js';
import type { StitchRecord } from './stitch-record.js';

/** What a stitch's file can hold, its schema says: legs, and points in all of them. */
const MOST_LEGS = 200;
const MOST_POINTS = 400;

export interface TakenStitch {
  readonly record: StitchRecord;
  /** what is seen in the drawing and is no thread, a line each */
  readonly notes: readonly string[];
}

/**
 * A stitch from a drawing of one repeat: one straight line with the id or class `seam`, as long as the repeat, and the
 * legs as lines in the order a hand works them. `passes="2"` says how heavy a leg is, `passes="0"` that it runs behind
 * the cloth. The lines of a group keep their shape where the seam bends. Where the lines do not hang together, repeats are
 * detached. Sizes become shares of repeat and width, so that the stitch can be made larger and smaller.
 * @throws InputErrors with everything that is wrong, each with the line of the file
 */
export async function stitchFromDrawing(text: string, title: string, where: string): Promise<TakenStitch> {
  const figure = readSvgFigure(text, where);
  const mistakes = [...figure.mistakes, ...wordMistakes(figure), ...copiesUnread(figure)];
  const frame = seamFrame(figure.lines, [...figure.groups, ...figure.unread], where, mistakes);
  const lines = figure.lines.filter((line) => !isSeam(line));
  if (lines.length === 0) {
    mistakes.push(
      new InputError('no-legs', where, 'nothing is drawn beside the seam', 'draw the thread as lines'),
    );
  }
  if (lines.length > MOST_LEGS) {
    const wrong = `${lines.length} lines are drawn beside the seam`;
    mistakes.push(
      new InputError('too-many-legs', where, wrong, `at most ${MOST_LEGS}: one repeat and no more`),
    );
  }
  if (mistakes.length || !frame) throw together(mistakes, where);

  const points = new DrawnPoints(frame);
  const legs = drawnLegs(lines, points);
  const record = recordOf(frame, points, legs, title);
  const drawnWrong = await legMistakes(record, legs, where);
  if (drawnWrong.length) throw together(drawnWrong, where);
  return { record, notes: notesOf(figure) };
}

function recordOf(
  frame: SeamFrame,
  points: DrawnPoints,
  drawn: readonly DrawnLeg[],
  title: string,
): StitchRecord {
  const [repeat, width] = [frame.length, points.width()];
  const joins = points.joins();
  const record: StitchRecord = {
    format: 1,
    title,
    otherNames: [],
    family: 'my own',
    for: 'Taken from a drawing.',
    sources: ['our own'],
    parameters: { repeat: sizeAround('Repeat', repeat), width: sizeAround('Width', width) },
    symmetry: 'none',
    halves: false,
    corner: 'turn',
    growth: 'on',
    smallest: { repeat: rounded(repeat * 0.7), width: rounded(width * 0.7) },
    points: points.places(joins),
    legs: drawn.map(({ leg }) => leg),
    joins: Object.fromEntries(joins),
  };
  return isDetached(record) ? { ...record, detached: true } : record;
}

/** What cannot be built is told with everything else that is wrong. */
function isDetached(record: StitchRecord): boolean {
  try {
    return !isOnePiece(stitchFrom(record, record.title, []).build({}), 0);
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}

/** What the file that comes of a drawing would be told, with the drawing's lines for its legs. */
async function legMistakes(
  record: StitchRecord,
  drawn: readonly DrawnLeg[],
  where: string,
): Promise<InputError[]> {
  const count = Object.keys(record.points).length;
  if (count > MOST_POINTS) {
    const wrong = `its lines have ${count} ends and bends`;
    return [
      new InputError('too-many-points', where, wrong, `at most ${MOST_POINTS}: draw them with fewer nodes`),
    ];
  }
  const errors = await checkStitchFile(record, where);
  return errors.map((error) => {
    const place = error.where.slice(where.length).trim();
    const leg = drawn.find(
      ({ leg: { name } }, k) => place === `leg "${name}"` || place.startsWith(`legs[${k}]`),
    );
    return leg ? new InputError(error.code, leg.line.where, error.wrong, error.right) : error;
  });
}

/** Copies of what is drawn elsewhere: thread that would be missing. */
const copiesUnread = ({ unread }: SvgFigure): InputError[] =>
  unread
    .filter(holdsThread)
    .map(({ name, where }) => new InputError('not-read', where, `a ${name} is not read`, 'draw it as lines'));

const holdsThread = ({ name }: FigureElement): boolean => !NO_THREAD.has(name);
const NO_THREAD: ReadonlySet<string> = new Set(['text', 'image', 'foreignObject']);

const notesOf = ({ unread }: SvgFigure): string[] =>
  unread.map(({ where }) => `${where}: it is no line and is left out; draw it as lines if it is to be sewn`);

const together = (mistakes: readonly InputError[], where: string): InputErrors =>
  new InputErrors(firstOf(inLineOrder(mistakes), where, (mistake) => mistake));

/** What is said of the whole drawing comes first. */
function inLineOrder(mistakes: readonly InputError[]): InputError[] {
  const line = ({ where }: InputError) => Number(/ line (\d+) \(/.exec(where)?.[1] ?? 0);
  return [...mistakes].sort((a, b) => line(a) - line(b));
}

const rounded = (value: number): number => Number(value.toFixed(2));

function sizeAround(title: string, value: number) {
  const usual = rounded(value);
  return { title, unit: 'mm', default: usual, min: rounded(usual * 0.7), max: rounded(usual * 2) } as const;
}
