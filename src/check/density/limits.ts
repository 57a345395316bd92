/** From where on density is told. Common practice; a maker who knows her cloth may set others. */
export interface DensityLimits {
  /** holes for each mm2, counted within 1 mm */
  readonly holes: Limit;
  /** stitches one over another, on the average over a mm2 */
  readonly layers: Limit;
  /** times the needle goes through one hole */
  readonly inOneHole: Limit;
  /** share of the cloth that a treatment reaches over which is covered by thread; more looks machine-made */
  readonly cover: number;
}

export interface Limit {
  readonly warning: number;
  readonly error: number;
}

/** Kinds of cloth, by what their threads bear. */
export const CLOTHS = ['firm', 'fine'] as const;
export type Cloth = (typeof CLOTHS)[number];

const USUAL: Omit<DensityLimits, 'inOneHole'> = {
  holes: { warning: 5, error: 9 },
  layers: { warning: 4, error: 6 },
  cover: 0.45,
};

/** Firm: cotton of the weight of quilts, velvet. Fine: fine cotton, silk, satin, which tear along holes sooner. */
export const LIMITS: Readonly<Record<Cloth, DensityLimits>> = {
  firm: { ...USUAL, inOneHole: { warning: 6, error: 10 } },
  fine: { ...USUAL, inOneHole: { warning: 4, error: 10 } },
};
