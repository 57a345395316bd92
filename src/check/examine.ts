import { type Design, stopsInOrder } from '../design/design.js';
import { type Finding, worstFirst } from '../finding.js';
import { type CoveredBand, coverFindings } from './density/band-cover.js';
import { type Density, density } from './density/density.js';
import { densityFindings, type NamedStop } from './density/findings.js';
import type { DensityLimits } from './density/limits.js';
import { type SewnStitches, stitchesOf, stitchesOfRecords } from './density/sewn-stitches.js';
import type { Call } from './density/tile-crew.js';
import { lengthFindings, type StitchLengths, stitchLengths } from './stitch-lengths.js';

/** What a look at all stitches of a piece of work tells before any thread is used. */
export interface Examined {
  readonly stitches: SewnStitches;
  /** one for each color stop, in the order of the machine */
  readonly stops: readonly NamedStop[];
  readonly density: Density;
  readonly lengths: StitchLengths;
  /** worst first */
  readonly findings: readonly Finding[];
}

/** A design, with what came with the block; large work is counted quicker by a crew. */
export function examineDesign(
  design: Design,
  bands: readonly CoveredBand[],
  limits: DensityLimits,
  call?: Call,
): Examined {
  const stops = stopsInOrder(design).map(
    (stop): NamedStop =>
      stop ? { title: stop.title, isExisting: false } : { title: 'came with the block', isExisting: true },
  );
  const stitches = stitchesOf(design);
  // where nothing is sewn there is no color stop either, though a file would have one
  return examine({ ...stitches, stops: stitches.stops.slice(0, stops.length) }, stops, bands, limits, call);
}

/** Records of a stitch file of which nothing else is known. */
export function examineRecords(records: Uint8Array, limits: DensityLimits, call?: Call): Examined {
  const stitches = stitchesOfRecords(records);
  const stops = stitches.stops.map((): NamedStop => ({ title: '', isExisting: false }));
  return examine(stitches, stops, [], limits, call);
}

function examine(
  stitches: SewnStitches,
  stops: readonly NamedStop[],
  bands: readonly CoveredBand[],
  limits: DensityLimits,
  call?: Call,
): Examined {
  const measured = density(stitches, call);
  const findings = [
    ...densityFindings(stitches, measured, stops, limits),
    ...lengthFindings(stitches),
    ...coverFindings(measured, bands, limits.cover),
  ];
  return {
    stitches,
    stops,
    density: measured,
    lengths: stitchLengths(stitches),
    findings: worstFirst(findings),
  };
}
