import { type FigureLine, readSvgFigure } from '../formats/svg-figure.js';
import type { Piece } from '../formats/svg-shape.js';
import { distance, type Point } from '../geometry/point.js';
import { InputError } from '../input-error.js';
import { isOnePiece } from './one-piece.js';
import { stitchFrom } from './parse.js';
import type { LegRecord, PlaceRecord, StitchRecord } from './stitch-record.js';

/** Ends of lines nearer than this are one hole, mm: nobody draws more exactly. */
const SAME_HOLE = 0.2;
/** An under-leg is led through this many points at most. */
const MOST_BENDS = 8;
/** Passes of thread that a leg gets when its line does not say. Common practice. */
const USUAL_PASSES = 3;

/**
 * A stitch from a drawing of one repeat: one straight line with the id or class `seam`, as long as the repeat, and the
 * legs as lines in the order a hand works them. `passes="2"` says how heavy a leg is, `passes="0"` that it runs behind
 * the cloth. The lines of a group keep their shape where the seam bends. Where the lines do not hang together, repeats are
 * detached. Sizes become shares of repeat and width, so
 * that the stitch can be made larger and smaller.
 * @throws InputError naming the line of the file
 */
export function stitchFromDrawing(text: string, title: string, where: string): StitchRecord {
  const lines = readSvgFigure(text, where);
  const seams = lines.filter(isSeam);
  if (seams.length !== 1) {
    throw new InputError(
      'no-seam-line',
      where,
      seams.length ? `${seams.length} lines are marked as the seam` : 'no line is marked as the seam',
      'give one straight line the id "seam": it shows where the repeat begins and ends',
    );
  }
  const frame = seamFrame(seams[0]);
  const legs = lines.filter((line) => !isSeam(line));
  if (legs.length === 0) {
    throw new InputError('no-legs', where, 'nothing is drawn beside the seam', 'draw the thread as lines');
  }
  const record = new Taken(frame, legs).record(title);
  const stitch = stitchFrom(record, title, []);
  return isOnePiece(stitch.build({}), 0) ? record : { ...record, detached: true };
}

const isSeam = ({ attributes }: FigureLine): boolean =>
  attributes.id === 'seam' || (attributes.class ?? '').split(/\s+/).includes('seam');

interface SeamFrame {
  readonly length: number;
  toSeam(p: Point): Point;
}

/** The frame along the drawn seam: u from its start, v to the left hand. */
function seamFrame({ line, where }: FigureLine): SeamFrame {
  const [piece, ...more] = line.pieces;
  if (!piece || more.length || piece.kind !== 'straight') {
    throw new InputError(
      'crooked-seam',
      where,
      'the seam is no single straight line',
      'draw it straight, one repeat long',
    );
  }
  const { start } = line;
  const length = distance(start, piece.to);
  if (length < 1) {
    throw new InputError(
      'short-seam',
      where,
      `the seam is ${length.toFixed(2)} mm long`,
      'at least 1 mm, one repeat',
    );
  }
  const [tx, ty] = [(piece.to[0] - start[0]) / length, (piece.to[1] - start[1]) / length];
  return {
    length,
    toSeam: ([x, y]) => {
      const [dx, dy] = [x - start[0], y - start[1]];
      return [dx * tx + dy * ty, dx * ty - dy * tx];
    },
  };
}

/** What has been taken from a drawing so far. */
class Taken {
  private readonly points: { name: string; at: Point }[] = [];
  private readonly legs: LegRecord[] = [];
  private readonly anchors = new Map<number, string>();
  private controls = 0;

  constructor(
    private readonly frame: SeamFrame,
    lines: readonly FigureLine[],
  ) {
    // A hole at the end of the repeat is the hole at its start, one repeat on.
    for (const { line } of lines) {
      this.hole(frame.toSeam(line.start));
      this.hole(frame.toSeam(lastPoint(line.start, line.pieces)));
    }
    for (const { name, at } of this.points) {
      const next = this.points.find(
        (other) => other.name !== name && distance(other.at, [at[0] - frame.length, at[1]]) <= SAME_HOLE,
      );
      if (next) this.joins.set(name, next.name);
    }
    for (const line of lines) this.add(line);
  }

  private readonly joins = new Map<string, string>();

  record(title: string): StitchRecord {
    const vs = this.points.filter(({ name }) => name.startsWith('hole')).map(({ at }) => at[1]);
    // as broad as it is drawn: of a stitch on one side of the seam, how far its arms reach
    const width = Math.max(0, ...vs) - Math.min(0, ...vs) || 1;
    const { length } = this.frame;
    const share = (value: number, name: string): number | string =>
      Math.abs(value) < 1e-6 ? 0 : `${name} * ${Number(value.toFixed(5))}`;
    const placed = (name: string, at: Point): PlaceRecord => {
      const next = this.joins.get(name);
      // joined holes are the same to the last digit
      const [u, v] = next ? this.points.find((point) => point.name === next)!.at : at;
      const along = share(u / length, 'length');
      return [next ? (along === 0 ? 'length' : `length + ${along}`) : along, share(v / width, 'width')];
    };
    return {
      format: 1,
      title,
      otherNames: [],
      family: 'my own',
      for: 'Taken from a drawing.',
      sources: ['our own'],
      parameters: {
        repeat: sizeAround('Repeat', length),
        width: sizeAround('Width', width),
      },
      symmetry: 'none',
      halves: false,
      corner: 'turn',
      growth: 'on',
      smallest: { repeat: rounded(length * 0.7), width: rounded(width * 0.7) },
      points: Object.fromEntries(this.points.map(({ name, at }) => [name, placed(name, at)])),
      legs: this.legs,
      joins: Object.fromEntries(this.joins),
    };
  }

  private add({ line, attributes, group, where }: FigureLine): void {
    const passes = attributes.passes === undefined ? USUAL_PASSES : Number(attributes.passes);
    if (!(Number.isInteger(passes) && passes >= 0 && passes <= 12)) {
      throw new InputError(
        'bad-passes',
        where,
        `passes is "${attributes.passes}"`,
        'a whole number from 0 to 12',
      );
    }
    const name = attributes.id ?? `leg ${this.legs.length + 1}`;
    const pieces = line.pieces;
    const start = this.hole(this.frame.toSeam(line.start));
    const end = this.hole(this.frame.toSeam(lastPoint(line.start, pieces)));
    const anchor = group < 0 ? undefined : (this.anchors.get(group) ?? start);
    if (anchor !== undefined) this.anchors.set(group, anchor);
    const rest = {
      ...(anchor !== undefined && { keepsShapeAt: anchor }),
      ...(passes > 0 && passes !== USUAL_PASSES && { share: rounded(passes / USUAL_PASSES) }),
    };
    if (passes === 0) {
      this.addUnder(name, start, end, line.start, pieces, rest);
      return;
    }
    const bent = this.bend(line.start, pieces, start === end);
    for (const [k, { from, to, via, through }] of bent.entries()) {
      const ends = { from: from ?? start, to: to ?? end };
      const called = bent.length > 1 ? `${name} ${k + 1}` : name;
      if (via.length) this.legs.push({ name: called, kind: 'curve', ...ends, via, ...rest });
      else if (through.length) this.legs.push({ name: called, kind: 'curve', ...ends, through, ...rest });
      else this.legs.push({ name: called, kind: 'straight', ...ends, ...rest });
    }
  }

  /** Behind the cloth: beneath a leg that has the same two ends, else along its own line. */
  private addUnder(
    name: string,
    from: string,
    to: string,
    first: Point,
    pieces: readonly Piece[],
    rest: object,
  ): void {
    const cover = this.legs.find(
      (leg) =>
        'from' in leg &&
        leg.kind !== 'under' &&
        [leg.from, leg.to].sort().join() === [from, to].sort().join(),
    );
    const along = pieces.flatMap((piece, i) =>
      between(i ? lastPoint(first, pieces.slice(0, i)) : first, piece),
    );
    const via = cover
      ? []
      : along
          .slice(0, -1)
          .slice(0, MOST_BENDS)
          .map((p) => this.control(p));
    this.legs.push({
      name,
      kind: 'under',
      from,
      to,
      ...(cover ? { beneath: cover.name } : via.length ? { via } : {}),
      ...rest,
    });
  }

  /** How a line bends from end to end; one that comes back to its start is turned at its furthest point. */
  private bend(
    start: Point,
    pieces: readonly Piece[],
    closed: boolean,
  ): { from?: string; to?: string; via: string[]; through: string[] }[] {
    const [only] = pieces;
    if (pieces.length === 1 && only.kind === 'straight') return [{ via: [], through: [] }];
    if (pieces.length === 1 && only.kind === 'bezier' && !closed) {
      return [{ via: only.control.slice(1, -1).map((p) => this.control(p)), through: [] }];
    }
    const along = pieces.flatMap((piece, i) =>
      between(i ? lastPoint(start, pieces.slice(0, i)) : start, piece),
    );
    const inner = along.slice(0, -1);
    if (!closed) return [{ via: [], through: inner.map((p) => this.control(p)) }];
    const far = inner.reduce(
      (best, p, i) => (distance(p, start) > distance(inner[best], start) ? i : best),
      0,
    );
    const tip = this.hole(this.frame.toSeam(inner[far]));
    return [
      { to: tip, via: [], through: inner.slice(0, far).map((p) => this.control(p)) },
      { from: tip, via: [], through: inner.slice(far + 1).map((p) => this.control(p)) },
    ];
  }

  private hole(at: Point): string {
    const known = this.points.find(
      (point) => point.name.startsWith('hole') && distance(point.at, at) <= SAME_HOLE,
    );
    if (known) return known.name;
    const name = `hole ${this.points.filter((point) => point.name.startsWith('hole')).length + 1}`;
    this.points.push({ name, at });
    return name;
  }

  private control(p: Point): string {
    const name = `bend ${++this.controls}`;
    this.points.push({ name, at: this.frame.toSeam(p) });
    return name;
  }
}

const lastPoint = (start: Point, pieces: readonly Piece[]): Point => {
  const last = pieces[pieces.length - 1];
  if (!last) return start;
  return last.kind === 'bezier' ? last.control[last.control.length - 1] : last.to;
};

/** Points along a piece, its end included: enough to lead a curve through. */
function between(start: Point, piece: Piece): Point[] {
  if (piece.kind === 'straight') return [piece.to];
  const at = piece.kind === 'bezier' ? bezierAt(piece.control) : arcAt(piece.arc);
  return [1, 2, 3, 4].map((k) => (k === 4 ? lastPoint(start, [piece]) : at(k / 4)));
}

/** de Casteljau's construction. */
const bezierAt =
  (control: readonly Point[]) =>
  (t: number): Point => {
    let points = control;
    while (points.length > 1) {
      points = points
        .slice(1)
        .map(
          (b, i): Point => [
            points[i][0] + t * (b[0] - points[i][0]),
            points[i][1] + t * (b[1] - points[i][1]),
          ],
        );
    }
    return points[0];
  };

const arcAt =
  ({ center, a, b, from, to }: Extract<Piece, { kind: 'arc' }>['arc']) =>
  (t: number): Point => {
    const angle = from + t * (to - from);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return [center[0] + a[0] * cos + b[0] * sin, center[1] + a[1] * cos + b[1] * sin];
  };

const rounded = (value: number): number => Number(value.toFixed(2));

function sizeAround(title: string, value: number) {
  const usual = rounded(value);
  return { title, unit: 'mm', default: usual, min: rounded(usual * 0.7), max: rounded(usual * 2) } as const;
}
