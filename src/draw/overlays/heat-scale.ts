import type { Limit } from '../../check/density/limits.js';
import { mixed } from '../shade.js';

/** Values above `above`, up to those of the next step. */
export interface HeatStep {
  readonly above: number;
  readonly hex: string;
  /** what its color does not say alone: usual, more than is good, too much */
  readonly grade: 'usual' | 'warning' | 'error';
}

/**
 * From pale yellow through red to dark violet: lightness falls all the way, so that it reads without color and to color-blind
 * eyes (inferno by Smith and van der Walt, 2015; seven of its colors, from memory).
 */
const HEAT = ['#fcffa4', '#fac228', '#f57d15', '#d44842', '#9f2a63', '#65156e', '#280b53'];

/** Steps of a scale whose bounds fall on the limits: up to six even ones below the warning, two up to the error, the rest. */
export function heatScale({ warning, error }: Limit): HeatStep[] {
  const even = Math.min(6, Math.max(3, Math.round(warning)));
  const bounds = [
    ...Array.from({ length: even }, (_, i) => (warning * i) / even),
    warning,
    (warning + error) / 2,
    error,
  ];
  return bounds.map((above, i) => ({
    above,
    hex: heatAt(i / (bounds.length - 1)),
    grade: above < warning ? 'usual' : above < error ? 'warning' : 'error',
  }));
}

function heatAt(share: number): string {
  const at = share * (HEAT.length - 1);
  const i = Math.min(HEAT.length - 2, Math.floor(at));
  return mixed(HEAT[i], HEAT[i + 1], at - i);
}
