import { COARSE, COVER_CELL, HOLE } from './cells.js';
import { type Spread, Tally } from './tally.js';

/** How densely stitches stand, over the cloth within 1 mm of a stitch. */
export interface Measured {
  /** piercings within 1 mm of a place, by that circle's area; coincident ones each count */
  readonly holesPerMm2: Spread;
  /** stitches that lie over one another, each as wide as its thread */
  readonly layers: Spread;
  /** share of cloth under at least one thread: of the mm2 that is most covered, and of all cloth within 1 mm of a stitch */
  readonly cover: { readonly max: number; readonly mean: number };
  /** cloth within 1 mm of a stitch, mm2 */
  readonly areaMm2: number;
}

/** What is counted of a stop, over all tiles. */
export class Total {
  readonly holes = new Tally();
  readonly layers = new Tally();
  /** mm2 by how much of them is under thread */
  readonly cover = new Tally();
  /** coarse cells near a stitch */
  near = 0;
  /** cells of thread that are covered */
  covered = 0;

  addAll(other: Total): void {
    this.holes.addAll(other.holes);
    this.layers.addAll(other.layers);
    this.cover.addAll(other.cover);
    this.near += other.near;
    this.covered += other.covered;
  }

  measured(): Measured {
    const areaMm2 = this.near * COARSE ** 2;
    return {
      holesPerMm2: this.holes.spread(this.near, HOLE),
      layers: this.layers.spread(areaMm2 / COVER_CELL, 1),
      cover: {
        max: this.cover.spread(1, COVER_CELL).max,
        mean: areaMm2 > 0 ? (this.covered * COVER_CELL) / areaMm2 : 0,
      },
      areaMm2,
    };
  }
}
