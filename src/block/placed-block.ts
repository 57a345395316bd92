import type { BlockSource } from '../formats/dressing.js';
import { stopsOf } from '../formats/stops.js';
import { isAsItWas, type Placement, placedLine, placedPoint, turnedVector } from '../geometry/placement.js';
import { InputError } from '../input-error.js';
import type { Block } from './block.js';
import { placedMap } from './placed-map.js';
import { relaidFile } from './relay/relaid-file.js';
import { relayRuns } from './relay/relay-runs.js';

/**
 * A block made larger and turned, and without the color stops that are left out. Its seams keep their numbers; what a
 * stitch file sews is laid anew, see relayRuns, or only turned where the size stays. As it was, it is the very block.
 * @throws InputError for stops to leave out that there are not, and for fills where the size changes
 */
export function placedBlock(
  block: Block,
  placement: Placement,
  leaveOut: BlockSource['leaveOut'] = [],
): Block {
  const { existing, map } = block;
  if (isAsItWas(placement) && leaveOut.length === 0) return block;
  const { scale, turn, shift } = placement;
  const [x, y] = turnedVector(block.origin, turn);
  const left = existing ? keptStops(block, leaveOut) : null;
  return {
    ...block,
    map: placedMap(map, placement),
    existing: existing && movedFile(block, placement, new Set(leaveOut)),
    stops: left ? block.stops.flatMap((stop) => left.get(stop) ?? []) : block.stops,
    origin: isAsItWas(placement) ? block.origin : [scale * x - shift[0], scale * y - shift[1]],
    ...(block.keepClear && {
      keepClear: block.keepClear.map((one) => ({
        ...one,
        area: { ...one.area, rings: one.area.rings.map((ring) => placedLine(ring, placement)) },
      })),
    }),
    findings: block.findings.map((finding) =>
      finding.at ? { ...finding, at: placedPoint(finding.at, placement) } : finding,
    ),
  };
}

function movedFile({ existing, map, origin }: Block, placement: Placement, leaveOut: ReadonlySet<number>) {
  const { scale, turn } = placement;
  if (scale === 1) return relaidFile(existing!, { scale, turn }, leaveOut, null);
  const inFile = { scale: 1, turn: 0, shift: origin };
  const lines = [...map.seams.map(({ points }) => points), ...(map.outline ? [map.outline.points] : [])];
  const relay = relayRuns(
    existing!,
    lines.map((line) => placedLine(line, inFile)),
    { scale, turn },
    leaveOut,
  );
  return relaidFile(existing!, { scale, turn }, leaveOut, relay);
}

/** The numbers that color stops have once some are left out. */
export function keptStops({ existing, name }: Block, leaveOut: readonly number[]): Map<number, number> {
  const count = stopsOf(existing!).length;
  const missing = leaveOut.find((stop) => stop > count);
  if (missing !== undefined) {
    throw new InputError(
      'no-such-stop',
      `--leave-out ${missing}`,
      `${name} has no color stop ${missing}`,
      count === 1 ? 'it has one color stop' : `it has color stops 1 to ${count}`,
    );
  }
  const out = new Set(leaveOut);
  const kept = Array.from({ length: count }, (_, i) => i + 1).filter((stop) => !out.has(stop));
  if (kept.length > 0) return new Map(kept.map((stop, i) => [stop, i + 1]));
  throw new InputError('nothing-left', '--leave-out', 'leaves no color stop', 'keep one of them');
}
