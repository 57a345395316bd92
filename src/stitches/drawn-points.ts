import { distance, type Point } from '../geometry/point.js';
import type { SeamFrame } from './drawn-seam.js';
import type { PlaceRecord } from './stitch-record.js';

/** Ends of lines nearer than this are one hole, mm: nobody draws more exactly. */
const SAME_HOLE = 0.2;

/** Holes and bends of a drawn repeat, with names of their own; mm along the seam and across it. */
export class DrawnPoints {
  private readonly holes: { name: string; at: Point }[] = [];
  private readonly bends: { name: string; at: Point }[] = [];

  constructor(private readonly frame: SeamFrame) {}

  /** The name of the hole at a place of the drawing, which may be known already. */
  hole(p: Point): string {
    const at = this.frame.toSeam(p);
    const known = this.holes.find((hole) => distance(hole.at, at) <= SAME_HOLE);
    if (known) return known.name;
    const name = `hole ${this.holes.length + 1}`;
    this.holes.push({ name, at });
    return name;
  }

  /** The name of a new point that a leg bends by. */
  bend(p: Point): string {
    const name = `bend ${this.bends.length + 1}`;
    this.bends.push({ name, at: this.frame.toSeam(p) });
    return name;
  }

  /** Holes that are, one repeat on, the hole of another name: here to next. */
  joins(): Map<string, string> {
    const back = ([u, v]: Point): Point => [u - this.frame.length, v];
    return new Map(
      this.holes.flatMap(({ name, at }): [string, string][] => {
        const next = this.holes.find(
          (other) => other.name !== name && distance(other.at, back(at)) <= SAME_HOLE,
        );
        return next ? [[name, next.name]] : [];
      }),
    );
  }

  /** As broad as it is drawn, mm: of a stitch on one side of the seam, how far its arms reach. */
  width(): number {
    const vs = this.holes.map(({ at }) => at[1]);
    const width = Math.max(0, ...vs) - Math.min(0, ...vs);
    // what lies along the seam alone has no breadth to be made larger
    return width > SAME_HOLE ? width : 1;
  }

  /** All points as shares of repeat and width, so that the stitch can be made larger and smaller. */
  places(joins: ReadonlyMap<string, string>): Record<string, PlaceRecord> {
    const { length } = this.frame;
    const width = this.width();
    const placed = ({ name, at }: { name: string; at: Point }): [string, PlaceRecord] => {
      const next = joins.get(name);
      // joined holes are the same to the last digit
      const [u, v] = next ? this.holes.find((hole) => hole.name === next)!.at : at;
      const along = share(u / length, 'length');
      const first = next ? (along === 0 ? 'length' : `length + ${along}`) : along;
      return [name, [first, share(v / width, 'width')]];
    };
    return Object.fromEntries([...this.holes, ...this.bends].map(placed));
  }
}

const share = (value: number, name: string): number | string =>
  Math.abs(value) < 1e-6 ? 0 : `${name} * ${Number(value.toFixed(5))}`;
