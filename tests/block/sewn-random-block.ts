import { between, distance, type Point } from '../../src/geometry/point.js';

/**
 * Blocks of straight seams as flip-and-stitch makes them: a rectangle split across again and again, every seam butting
 * into earlier splits or the outline. Ends keep clear of other junctions, as makers do for the bulk.
 */
export interface PlainBlock {
  readonly outline: readonly Point[];
  /** in the order of the splits; the last could be sewn first */
  readonly seams: readonly (readonly Point[])[];
}

/** Numbers in [0, 1) from a seed (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Junctions on one line are at least this far apart: more than two overruns. */
const CLEAR = 14;
const SHORTEST_SEAM = 25;
/** An arc that bulges by an eighth of its chord meets a line 28 degrees sharper than its chord does. */
const SHARPEST_ANGLE = (35 * Math.PI) / 180;
const SHARPEST_WITH_ARCS = (60 * Math.PI) / 180;

/** With a `bulge`, seams that have room for it are arcs that bulge by that share of their chord. */
export function randomBlock(seed: number, wanted: number, bulge = 0): PlainBlock {
  const random = seeded(seed);
  const [w, h] = [100 + 60 * random(), 110 + 80 * random()].map(Math.round);
  const outline: Point[] = [
    [0, 0],
    [w, 0],
    [w, h],
    [0, h],
  ];
  const taken: Point[] = [...outline];
  let pieces: Point[][] = [outline];
  const seams: Point[][] = [];
  for (let attempt = 0; attempt < 400 && seams.length < wanted; attempt++) {
    pieces = pieces.sort((a, b) => area(b) - area(a));
    const pick = Math.min(pieces.length - 1, Math.floor(2 * random()));
    const split = splitOnce(pieces[pick], random, bulge ? SHARPEST_WITH_ARCS : SHARPEST_ANGLE);
    if (!split || split.seam.some((p) => taken.some((q) => distance(p, q) < CLEAR))) continue;
    pieces.splice(pick, 1, ...split.parts);
    seams.push(split.seam);
    taken.push(...split.seam);
  }
  const closed = [...outline, outline[0]];
  return { outline: closed, seams: bulge ? withArcs(seams, closed, bulge) : seams };
}

function withArcs(seams: readonly Point[][], outline: readonly Point[], bulge: number): Point[][] {
  const lines = seams.map((seam) => [...seam]);
  seams.forEach((seam, i) => {
    const arc = bulged(seam, bulge);
    const others = [outline, ...lines.filter((_, k) => k !== i)];
    const inner = arc.filter((p) => seam.every((end) => distance(p, end) > CLEAR));
    const butted = others.some((line) => line.some((end) => toLine(end, seam) < 1));
    const free = inner.every((p) => others.every((line) => toLine(p, line) > CLEAR / 2));
    if (free && !butted) lines[i] = arc;
  });
  return lines;
}

function toLine(p: Point, line: readonly Point[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    const length = distance(a, b);
    const u = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length;
    least = Math.min(least, distance(p, between(a, b, Math.max(0, Math.min(1, u / length)))));
  }
  return least;
}

/** An arc of `bulge` times its chord, in place of a seam's straight line, chords of one degree at most. */
function bulged([a, b]: readonly Point[], bulge: number): Point[] {
  const chord = distance(a, b);
  const sagitta = bulge * chord;
  const radius = (chord * chord) / (8 * sagitta) + sagitta / 2;
  const half = Math.asin(Math.min(1, chord / (2 * radius)));
  const [tx, ty] = [(b[0] - a[0]) / chord, (b[1] - a[1]) / chord];
  const count = Math.ceil((2 * half * 180) / Math.PI) + 1;
  return Array.from({ length: count + 1 }, (_, i): Point => {
    const angle = -half + (2 * half * i) / count;
    const u = chord / 2 + radius * Math.sin(angle);
    const v = radius * (Math.cos(angle) - Math.cos(half));
    return [a[0] + u * tx + v * ty, a[1] + u * ty - v * tx];
  });
}

function splitOnce(
  piece: readonly Point[],
  random: () => number,
  sharpest: number,
): { seam: Point[]; parts: Point[][] } | null {
  const n = piece.length;
  const i = Math.floor(n * random());
  const k = (i + 1 + Math.floor((n - 1) * random())) % n;
  const p = between(piece[i], piece[(i + 1) % n], 0.2 + 0.6 * random());
  const q = between(piece[k], piece[(k + 1) % n], 0.2 + 0.6 * random());
  if (distance(p, q) < SHORTEST_SEAM) return null;
  for (const [end, far, e] of [
    [p, q, i],
    [q, p, k],
  ] as const) {
    const angle = angleBetween([far[0] - end[0], far[1] - end[1]], edgeOf(piece, e));
    if (angle < sharpest) return null;
  }
  const first: Point[] = [p];
  for (let j = (i + 1) % n; ; j = (j + 1) % n) {
    first.push(piece[j]);
    if (j === k) break;
  }
  const second: Point[] = [q];
  for (let j = (k + 1) % n; ; j = (j + 1) % n) {
    second.push(piece[j]);
    if (j === i) break;
  }
  const parts = [
    [...first, q],
    [...second, p],
  ];
  return parts.some((part) => area(part) < 500) ? null : { seam: [p, q], parts };
}

const edgeOf = (piece: readonly Point[], i: number): Point => {
  const [a, b] = [piece[i], piece[(i + 1) % piece.length]];
  return [b[0] - a[0], b[1] - a[1]];
};

function angleBetween(a: Point, b: Point): number {
  return Math.atan2(Math.abs(a[0] * b[1] - a[1] * b[0]), Math.abs(a[0] * b[0] + a[1] * b[1]));
}

function area(piece: readonly Point[]): number {
  let sum = 0;
  piece.forEach(([x, y], i) => {
    const [nextX, nextY] = piece[(i + 1) % piece.length];
    sum += x * nextY - nextX * y;
  });
  return Math.abs(sum) / 2;
}
