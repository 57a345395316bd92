/**
 * Needle points as JSON: whole tenths of a millimeter in the block's frame, x right, y down. Segment by segment, the
 * first point is where the needle is brought to, every other one a hole.
 */
export interface NeedlePoints {
  readonly units: '0.1mm';
  readonly stops: readonly NeedlePointStop[];
}

export interface NeedlePointStop {
  /** from 1, in the order of the machine */
  readonly stop: number;
  readonly title: string;
  readonly seams: readonly (number | 'outline')[];
  /** null for a stop that came with the block */
  readonly thread: { readonly name: string; readonly hex: string; readonly weight: string } | null;
  readonly segments: readonly (readonly (readonly [number, number])[])[];
}

/** One line a segment, so that two files can be compared by eye. */
export function writeNeedlePoints(points: NeedlePoints): string {
  const stops = points.stops.map(({ segments, ...stop }) => {
    const head = JSON.stringify(stop).slice(0, -1);
    const lines = segments.map((segment) => `\n      ${JSON.stringify(segment)}`);
    return `    ${head}, "segments": [${lines.join(',')}${lines.length ? '\n    ' : ''}]}`;
  });
  return `{\n  "units": "${points.units}",\n  "stops": [\n${stops.join(',\n')}\n  ]\n}\n`;
}
