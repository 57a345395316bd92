import { type Finding, lineName } from '../../finding.js';
import type { Density } from './density.js';

/** A dressed line, its stops, and how much cloth its treatment reaches over. */
export interface CoveredBand {
  readonly seam: number | 'outline';
  /** from 0, in the order of the machine */
  readonly stops: readonly number[];
  readonly areaMm2: number;
}

/** Share of a treatment's band that lies under thread, 0 to 1; rows that lie over one another count twice. */
export function bandCover({ stops }: Density, { stops: own, areaMm2 }: CoveredBand): number {
  const covered = own.reduce((sum, stop) => {
    const { alone } = stops[stop];
    return sum + alone.cover.mean * alone.areaMm2;
  }, 0);
  return areaMm2 > 0 ? Math.min(1, covered / areaMm2) : 0;
}

/** Treatments so dense that they no longer look worked by hand. */
export function coverFindings(density: Density, bands: readonly CoveredBand[], limit: number): Finding[] {
  return bands.flatMap((band): Finding[] => {
    const cover = bandCover(density, band);
    if (cover <= limit) return [];
    return [
      {
        level: 'note',
        code: 'full-cover',
        message:
          `${lineName(band.seam)}: thread covers ${Math.round(cover * 100)} % of the band; ` +
          `above ${Math.round(limit * 100)} % it no longer looks worked by hand; a larger repeat or fewer passes would open it`,
        seam: band.seam,
        ...(band.stops.length > 0 && { stop: band.stops[0] + 1 }),
      },
    ];
  });
}
