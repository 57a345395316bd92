import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import STRtree from 'jsts/org/locationtech/jts/index/strtree/STRtree.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import type { Chain } from '../../../src/fit/fit.js';

const factory = new GeometryFactory();

/** A leg as JTS (jsts) sees it. */
export type LegLine = ReturnType<typeof factory.createLineString>;

/** The visible legs of chains for which `takes` holds. */
export function legLines(
  chains: readonly Chain[],
  takes: (kind: Chain['kind'][number]) => boolean,
): LegLine[] {
  return chains.flatMap(({ kind, path, pathStart }) =>
    kind.flatMap((own, leg) => {
      if (own === 'under' || !takes(own)) return [];
      const places = [];
      for (let k = pathStart[leg]; k < pathStart[leg + 1]; k++) {
        places.push(new Coordinate(path[2 * k], path[2 * k + 1]));
      }
      return places.length > 1 ? [factory.createLineString(places)] : [];
    }),
  );
}

/** An index (STR tree) of lines, asked for the least distance from a line to any of them that is under `within`, mm. */
export function nearest(lines: readonly LegLine[], within: number): (line: LegLine) => number {
  const tree = new STRtree();
  for (const line of lines) tree.insert(line.getEnvelopeInternal(), line);
  return (line) => {
    const around = line.getEnvelopeInternal().copy();
    around.expandBy(within);
    let least = Infinity;
    for (const other of tree.query(around).toArray())
      least = Math.min(least, DistanceOp.distance(line, other));
    return least;
  };
}
