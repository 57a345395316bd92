import type { Chain } from '../fit/fit.js';
import { Chords, type ChordsAsked } from './chords.js';
import { type DividedFor, type Division, LikeLegs } from './like-legs.js';
import { Spine } from './spine.js';

/**
 * Needle points of the curved legs of one chain: each leg is divided once and serves all its passes. Points of a leg
 * stand one after another, from its start; buffers are reused from chain to chain.
 */
export class Samples {
  /** points of the leg asked for last: from `first` up to `last`, both included */
  first = 0;
  last = 0;
  x = new Float64Array(4096);
  y = new Float64Array(4096);
  /** across the leg, to its left hand; as long as a pass may lie off the line there, 0 to 1 */
  nx = new Float64Array(4096);
  ny = new Float64Array(4096);
  private count = 0;
  private firstOf = new Int32Array(0);
  private lastOf = new Int32Array(0);
  private readonly spine = new Spine();
  private readonly chords = new Chords();
  private readonly like = new LikeLegs();

  /** Forgets the legs of the chain before. */
  begin(chain: Chain): void {
    const legs = chain.from.length;
    if (this.firstOf.length < legs) {
      this.firstOf = new Int32Array(2 * legs);
      this.lastOf = new Int32Array(2 * legs);
    }
    this.firstOf.fill(-1, 0, legs);
    this.count = 0;
    this.like.begin();
  }

  /**
   * Needle points for a curved leg from `skip` mm after its start to `stop` mm before its end, both included. The first
   * pass decides; the others take the same.
   */
  curve(chain: Chain, leg: number, skip: number, stop: number, asked: ChordsAsked): void {
    if (this.again(leg)) return;
    this.spine.measure(chain, leg);
    this.firstOf[leg] = this.count;
    const { at, count } = this.divided(chain.legClass[leg], { skip, stop, asked });
    for (let i = 0; i < count; i++) this.add(at[i], eased(at[i], this.spine.length));
    this.lastOf[leg] = this.count - 1;
    this.again(leg);
  }

  /** The points that a curved leg has got already; whether it has. */
  again(leg: number): boolean {
    if (this.firstOf[leg] < 0) return false;
    this.first = this.firstOf[leg];
    this.last = this.lastOf[leg];
    return true;
  }

  /** Where the leg just measured is divided; legs of one class mostly have one shape, and are divided alike. */
  private divided(legClass: number, wanted: DividedFor): Division {
    const known = this.like.find(legClass, this.spine, wanted);
    if (known) return known;
    this.chords.divide(this.spine, wanted.skip, wanted.stop, wanted.asked);
    return this.like.keep(legClass, this.spine, wanted, this.chords);
  }

  /** Points evenly along the leg, `apart` mm from each other; `width` says how far off the line at a share of the leg. */
  evenly(
    chain: Chain,
    leg: number,
    skip: number,
    stop: number,
    apart: number,
    width: (share: number) => number,
  ): void {
    this.spine.measure(chain, leg);
    const { length } = this.spine;
    const span = length - skip - stop;
    const rows = Math.max(2, Math.round(span / apart));
    this.first = this.count;
    for (let i = 0; i <= rows; i++) {
      const at = skip + (span * i) / rows;
      this.add(at, width(at / length));
    }
    this.last = this.count - 1;
  }

  private add(at: number, width: number): void {
    if (this.count === this.x.length) this.grow();
    const { spine } = this;
    const c = this.count++;
    spine.goTo(at);
    this.x[c] = spine.x;
    this.y[c] = spine.y;
    this.nx[c] = spine.ty * width;
    this.ny[c] = -spine.tx * width;
  }

  private grow(): void {
    for (const name of ['x', 'y', 'nx', 'ny'] as const) {
      const more = new Float64Array(2 * this[name].length);
      more.set(this[name]);
      this[name] = more;
    }
  }
}

/** Passes lie full apart after this share of a curve, or this many mm. */
const TAPER_SHARE = 0.25;
const TAPER_MM = 0.9;

function eased(at: number, length: number): number {
  const ramp = Math.min(TAPER_SHARE * length, TAPER_MM);
  const t = Math.min(1, at / ramp, (length - at) / ramp);
  return t * t * (3 - 2 * t);
}
