import type { PatchFabric } from '../../src/formats/dressing.js';

/** A fabric as it is remembered of a patch, without the patch. */
export type Cloth = Pick<PatchFabric, 'colors' | 'busyness' | 'picture'>;

/** Pixels by rows, four bytes each: red, green, blue, opacity. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** What drawing asks of the core. */
export interface DrawAsks {
  /**
   * the fabric in each picture, its name with it; null where a picture is transparent all over
   * @param widthMm how wide the piece of fabric is that a picture shows
   */
  fabrics: {
    ask: {
      readonly picture: string;
      readonly pieces: readonly { readonly pixels: Pixels; readonly widthMm: number }[];
    };
    answer: readonly (Cloth | null)[];
  };
}
