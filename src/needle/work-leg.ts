import type { Chain } from '../fit/fit.js';
import type { NeedlePoints } from './needle-points.js';
import type { Craft } from './run.js';
import type { Samples } from './samples.js';

/** One pass over a leg: from where the needle stands to (x, y). */
export interface Pass {
  readonly leg: number;
  /** from the leg's `to` to its `from` */
  readonly back: boolean;
  /** which pass this is, from 0, and of how many */
  readonly turn: number;
  readonly of: number;
  /** the hand, 1 left and -1 right of a leg from its start, on which what is not even to both hands begins */
  readonly hand: 1 | -1;
  /** mm left out at the leg's `from` and `to` end, where it starts on a ring */
  readonly skip: number;
  readonly stop: number;
  /** the hole where it ends */
  readonly x: number;
  readonly y: number;
}

/** A satin's holes on either side lie about one thread of No. 40 apart: each stitch goes on by half of that, mm. */
const SATIN_ROW = 0.22;
/**
 * A straight: one stitch up to the longest, else evenly divided; the divisions of successive passes are a third of a
 * stitch apart, so that they make no dotted line, and lie side by side as those of curves do.
 */
export function workStraight(points: NeedlePoints, pass: Pass, craft: Craft): void {
  const { x: x0, y: y0 } = points;
  const dx = pass.x - x0;
  const dy = pass.y - y0;
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length > craft.longest) {
    const parts = Math.ceil(length / craft.longest - 1e-9);
    // measured from the leg's own start whichever way it is sewn
    const shift = (pass.turn % 3) / 3;
    const from = pass.back ? 1 - shift : shift;
    const apart = pass.hand * (pass.turn - (pass.of - 1) / 2) * (pass.back ? -craft.spread : craft.spread);
    const asideX = (apart * dy) / length;
    const asideY = (-apart * dx) / length;
    for (let i = 0; i <= parts; i++) {
      const t = (i + from) / parts;
      if (t < 1e-9 || t > 1 - 1e-9) continue;
      // a short stitch at either end is sewn together with its neighbor, where that is not too long
      const piece = Math.min(t, 1 - t) * length;
      if (piece < craft.shortest && piece + length / parts <= craft.longest) continue;
      points.sew(x0 + dx * t + asideX, y0 + dy * t + asideY);
    }
  }
  points.sew(pass.x, pass.y);
}

/** A curve's chords, mm, where neither its bend nor the thread asks for others. */
const CHORD = 1.1;
/** A thread that wants long stitches gets chords this much longer than its shortest, so that dividing leaves none shorter. */
const ROOM = 1.1;

/**
 * A curve in short chords; its passes lie side by side in the middle and share their end holes. What lies under the cloth
 * need not look round, and is sewn in as few stitches as follow its line.
 */
export function workCurve(
  points: NeedlePoints,
  chain: Chain,
  pass: Pass,
  craft: Craft,
  samples: Samples,
): void {
  const { leg, back, skip, stop, turn, of } = pass;
  const under = chain.kind[leg] === 'under';
  const aside = under ? 0 : ((of - 1) / 2) * craft.spread;
  if (!samples.again(leg)) {
    const { shortest, longest } = craft;
    const wanted = under ? longest : Math.max(CHORD, ROOM * shortest);
    samples.curve(chain, leg, skip, stop, { wanted, shortest, longest, aside });
  }
  const from = points.count - 1;
  alongSamples(points, samples, back, under ? 0 : pass.hand * (turn * craft.spread - aside));
  points.arrive(pass.x, pass.y, from);
  points.thinEnds(from, craft.shortest);
}

/** Pierces at the samples between the ends, that far to their left hand. */
function alongSamples(points: NeedlePoints, samples: Samples, back: boolean, apart: number): void {
  const { first, last } = samples;
  if (last - first < 2) return;
  if (back) points.sewAlong(samples, last - 1, first + 1, apart);
  else points.sewAlong(samples, first + 1, last - 1, apart);
}

/** Satin wider than this has thread along its edges beneath it, so that they stand up; mm, as wide as it is to be. Common practice. */
const EDGED_FROM = 2;
/** Thread along an edge lies so far inside it, mm. Common practice. */
const EDGE_INSET = 0.45;

/**
 * A narrow satin. All passes but the last run along its middle and become its padding; the last is the zigzag. Where
 * only one pass is sewn, it goes there and back along the middle first. Of a wider one the first pass goes round along both
 * edges before anything else.
 */
export function workSatin(
  points: NeedlePoints,
  chain: Chain,
  pass: Pass,
  craft: Craft,
  samples: Samples,
): void {
  const { leg, back, skip, stop } = pass;
  const half = chain.size[leg] / 2;
  const { shortest, longest, pull = 0 } = craft;
  const asked = { wanted: Math.max(CHORD, ROOM * shortest), shortest, longest, aside: 0 };
  const width = chain.kind[leg] === 'petal' ? leaf : full;
  const edged = pass.turn === 0 && 2 * half > EDGED_FROM;
  if (edged) {
    const inside = (share: number) => Math.max(0, half * width(share) - EDGE_INSET);
    samples.evenly(chain, leg, skip, stop, asked.wanted, inside);
    alongSamples(points, samples, back, pass.hand);
    alongSamples(points, samples, !back, -pass.hand);
  }
  if (pass.turn < pass.of - 1) {
    samples.curve(chain, leg, skip, stop, asked);
    alongSamples(points, samples, back, paddingLane(pass, half, craft));
    points.sew(pass.x, pass.y);
    return;
  }
  if (pass.of === 1 && !edged) {
    const { x, y } = points;
    samples.curve(chain, leg, skip, stop, asked);
    alongSamples(points, samples, back, 0);
    points.sew(pass.x, pass.y);
    alongSamples(points, samples, !back, 0);
    points.sew(x, y);
  }
  samples.evenly(chain, leg, skip, stop, SATIN_ROW, (share) => half * width(share) + pull);
  const { first, last } = samples;
  const step = back ? -1 : 1;
  const end = back ? first : last;
  let side = -pass.hand;
  for (let s = (back ? last : first) + step; s !== end; s += step) {
    points.sew(samples.x[s] + samples.nx[s] * side, samples.y[s] + samples.ny[s] * side);
    side = -side;
  }
  points.sew(pass.x, pass.y);
}

/** Padding runs along the middle until its holes are full, then beside it, to either hand in turn and well under the satin. */
function paddingLane({ turn, of, hand }: Pass, half: number, { holeLimit, spread }: Craft): number {
  const lanes = Math.ceil((of - 1) / holeLimit);
  const lane = turn % lanes;
  const out = Math.ceil(lane / 2) * Math.min(spread, half / (lanes + 1));
  return (lane % 2 === 0 ? out : -out) * hand;
}

/** How wide a satin is at a share of its length. */
const leaf = (share: number): number => Math.sqrt(Math.sin(Math.PI * share));
const full = (): number => 1;
