/**
 * From where on density is told in a piece of work, where it is not as is usual on firm cloth. Measures that are not said are
 * told from where the cloth's usual limits are.
 */
export interface DensityAsked {
  /** what its threads bear; firm when not given */
  readonly cloth?: 'firm' | 'fine';
  /** needle holes a mm2 */
  readonly holes?: LimitAsked;
  /** threads one over another, on the average of a mm2 */
  readonly layers?: LimitAsked;
  /** times the needle goes through one hole */
  readonly inOneHole?: LimitAsked;
  /** share of the cloth that a treatment reaches over which is under thread: more looks machine-made */
  readonly cover?: number;
}

/** From where on it is worth a look, and above what it is too much. */
export type LimitAsked = readonly [worthALook: number, tooMuch: number];

/** What limits may lie between, in the measures of `DensityAsked`. */
export const DENSITY_RANGES = {
  holes: { min: 0.5, max: 100 },
  layers: { min: 0.5, max: 100 },
  inOneHole: { min: 1, max: 100 },
  cover: { min: 0.01, max: 1 },
} as const;
