import pathParser from 'svg-path-parser';
import { arcBetween } from '../geometry/ellipse.js';
import type { Point } from '../geometry/point.js';
import { InputError } from '../input-error.js';
import type { Piece, Subpath } from './svg-shape.js';

/** The last control point of the curve before, and of which kind that was. */
interface Handle {
  readonly kind: 'C' | 'Q';
  readonly control: Point;
}

/**
 * The lines of path data (Scalable Vector Graphics 2, section 9.3). Each moveto begins a line of its own, and so does
 * drawing on after a closepath. Smooth curves take the mirrored control point of a curve of their own kind before them.
 *
 * @throws InputError when the data is not path data
 */
export function readPathData(data: string, place: string): Subpath[] {
  if (data.trim() === '' || data.trim() === 'none') return [];
  const subpaths: Subpath[] = [];
  let start: Point = [0, 0];
  let pieces: Piece[] = [];
  let mirrored: Handle | null = null;
  const finish = (closed: boolean) => {
    if (pieces.length) subpaths.push({ start, pieces, closed });
    pieces = [];
  };
  for (const command of commandsOf(data, place)) {
    const from: Point = [command.x0, command.y0];
    const to: Point = [command.x, command.y];
    const first: Point = [command.x1 ?? Number.NaN, command.y1 ?? Number.NaN];
    const second: Point = [command.x2 ?? Number.NaN, command.y2 ?? Number.NaN];
    const reflected = (kind: 'C' | 'Q'): Point =>
      mirrored?.kind === kind ? [2 * from[0] - mirrored.control[0], 2 * from[1] - mirrored.control[1]] : from;
    let next: Handle | null = null;
    switch (command.code) {
      case 'M':
        finish(false);
        start = to;
        break;
      case 'Z':
        finish(true);
        start = to;
        break;
      case 'L':
      case 'H':
      case 'V':
        pieces.push({ kind: 'straight', to });
        break;
      case 'C':
      case 'S': {
        const lead = command.code === 'C' ? first : reflected('C');
        pieces.push({ kind: 'bezier', control: [from, lead, second, to] });
        next = { kind: 'C', control: second };
        break;
      }
      case 'Q':
      case 'T': {
        const control: Point = command.code === 'Q' ? first : reflected('Q');
        pieces.push({ kind: 'bezier', control: [from, control, to] });
        next = { kind: 'Q', control };
        break;
      }
      case 'A': {
        const slant = ((command.xAxisRotation ?? 0) * Math.PI) / 180;
        const radii: Point = [command.rx ?? 0, command.ry ?? 0];
        const arc = arcBetween(from, to, radii, slant, !!command.largeArc, !!command.sweep);
        pieces.push(arc ? { kind: 'arc', arc, to } : { kind: 'straight', to });
        break;
      }
    }
    mirrored = next;
  }
  finish(false);
  return subpaths;
}

function commandsOf(data: string, place: string) {
  try {
    return pathParser.makeAbsolute(pathParser.parseSVG(data));
  } catch (error) {
    const found = /but (.*) found/.exec((error as Error).message)?.[1] ?? 'something else';
    const offset = (error as { location?: { start?: { offset?: number } } }).location?.start?.offset;
    const where = offset === undefined ? '' : ` at character ${offset + 1}`;
    throw new InputError(
      'bad-path',
      place,
      `its path data has ${found}${where}`,
      'give whole path data, as a drawing program saves it',
    );
  }
}
