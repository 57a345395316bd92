import { boxOf } from '../../geometry/box.js';
import { distance, type Point } from '../../geometry/point.js';
import { cumulativeLength, type Points } from '../../geometry/polyline.js';
import { pointAtLength } from '../../geometry/polyline-part.js';
import { type Anchor, type LabelRoom, labelRoom } from './label-room.js';
import type { Label, PatternLine } from './pattern.js';

/** A line of the block with what is to be written beside it, and the things put on by hand along it. */
export interface NamedLine {
  readonly text: string;
  readonly along: Points;
  readonly things: readonly { readonly text: string; readonly at: Point; readonly radius: number }[];
}

/** A figure that stands free, by what is drawn of it. */
export interface NamedFigure {
  readonly text: string;
  readonly lines: readonly Points[];
}

/** Letters' bodies, mm: 8 points, and what is still read of a word beside a bead. */
const NAME = 2.9;
const THING = 2;
/** Things put on by hand are named again after so much of their line, mm. */
const THING_EVERY = 40;

/** Shares of a part of a line at which its name is tried, the middle first. */
const SHARES = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9];
/** A long line has its name so often, mm, that no page that it runs over is without. */
const NAMED_EVERY = 120;
/** How far from the line the name is tried, mm: beyond the widest treatment it would no longer be seen to belong to it. */
const DISTANCES = [1.5, 2.5, 3.5, 4.5, 5.5, 6.5, 8, 10, 12, 15];
const ROUND = [0, 90, 180, 270, 45, 135, 225, 315].map((degrees): Point => {
  const angle = (degrees * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle)];
});

/** Names beside what they name, clear of all that is drawn where there is room. Things have theirs at least once a line. */
export function labelsOf(
  drawn: readonly PatternLine[],
  named: readonly NamedLine[],
  figures: readonly NamedFigure[],
): Label[] {
  const room = labelRoom();
  // a seam may be written over sooner than a stitch
  for (const { kind, points } of drawn) room.take(points, kind === 'seam' ? 1 : 3);
  const labels: Label[] = [];
  const write = (label: Label) => {
    room.write(label);
    labels.push(label);
  };
  for (const { text, along } of named) {
    const label = { text, size: NAME };
    for (const anchors of besideParts(along)) {
      write({ ...label, at: room.find(label, anchors, DISTANCES).at });
    }
  }
  for (const { text, lines } of figures) {
    const { left, right, top, bottom } = boxOf(lines);
    const at: Point = [(left + right) / 2, (top + bottom) / 2];
    const radius = Math.max(right - left, bottom - top) / 2;
    const label = { text, size: NAME };
    write({ ...label, at: room.find(label, roundAbout(at), farFrom(radius)).at });
  }
  for (const { things } of named) nameThings(room, things, write);
  return labels;
}

/** The first of each kind, and then one after every stretch where its word covers nothing: the others are seen to be like it. */
function nameThings(room: LabelRoom, things: NamedLine['things'], write: (label: Label) => void): void {
  const told = new Map<string, Point>();
  for (const { text, at, radius } of things) {
    const last = told.get(text);
    if (last && distance(last, at) < THING_EVERY) continue;
    const label = { text, size: THING };
    const found = room.find(label, roundAbout(at), [radius + 0.6, radius + 1.4]);
    if (found.covers > 0 && last) continue;
    told.set(text, at);
    write({ ...label, at: found.at });
  }
}

/** For each part of a line both of its sides at its shares. */
function besideParts(line: Points): Anchor[][] {
  const lengths = cumulativeLength(line);
  const length = lengths[lengths.length - 1];
  const parts = Math.max(1, Math.round(length / NAMED_EVERY));
  return Array.from({ length: parts }, (_, part) =>
    SHARES.flatMap((share) => {
      const u = ((part + share) * length) / parts;
      const at = pointAtLength(line, lengths, u);
      const [a, b] = [-0.5, 0.5].map((mm) =>
        pointAtLength(line, lengths, Math.min(length, Math.max(0, u + mm))),
      );
      const run = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
      const [x, y] = [(b[1] - a[1]) / run, (a[0] - b[0]) / run];
      return [
        { at, away: [x, y] as Point },
        { at, away: [-x, -y] as Point },
      ];
    }),
  );
}

const roundAbout = (at: Point): Anchor[] => ROUND.map((away) => ({ at, away }));

const farFrom = (radius: number): number[] => DISTANCES.map((distance) => radius + distance - 0.5);
