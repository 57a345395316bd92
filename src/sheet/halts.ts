import type { Role, StopRole } from '../block/roles/role.js';
import { SEAM_ALLOWANCE } from '../block/sewn-lines.js';
import { type Stop, stopsInOrder } from '../design/design.js';
import type { Dressed } from '../dress.js';
import { stopsOf } from '../formats/stops.js';
import { boxOf } from '../geometry/box.js';
import type { Runs } from '../needle/run.js';
import { layings } from './laying.js';

/** What the maker does while the machine halts. */
export interface Halt {
  /** before which stop, from 1; one more than there are is at the end */
  readonly before: number;
  readonly what: string;
}

/** Common practice, as all that is said here of a block that is pieced in the hoop; its own instructions come first. */
const TRIM_BLOCK = 'Trim excess now: the block close to its outline, all layers that the edge is to cover.';
const TRIM_CLOSE = 'Trim excess now, close outside the line just sewn: the edge comes over it.';
const TRIM_WIDE = `Trim excess now, but leave what the next seams take in (${SEAM_ALLOWANCE} mm where nothing else is said).`;
const AFTER: Partial<Record<Role, string>> = {
  seam: 'Trim what is wider than the seam allowance, fold the piece over its seam and press it flat.',
  'tack-down': TRIM_WIDE,
};
/** The same where an edge is sewn next. */
const COVERED: typeof AFTER = { ...AFTER, 'tack-down': TRIM_CLOSE };

/**
 * Where the work is handled between two stops: as the block's own stops ask for it, and where the new ones need something
 * laid, looked at or pulled out. What is done at a halt is told once, before the stop that follows it.
 *
 * @param roles of the block's own stops; none for a drawing
 */
export function haltsOf(dressed: Dressed, roles: readonly StopRole[]): Halt[] {
  const stops = stopsInOrder(dressed.design);
  const laid = laidAlong(dressed);
  const { hooping = {}, outline } = dressed.dressing;
  const roundEdges = edgesRound(dressed, roles);
  const handled = asHandled(roles, roundEdges);
  const laying = layings(handled);
  let own = 0;
  let trimmed = false;

  const trimBefore = (n: number): Halt[] => {
    const isDone = trimmed;
    trimmed = true;
    return isDone ? [] : [{ before: n, what: TRIM_BLOCK }];
  };
  const ofOwn = (n: number): Halt[] => {
    const role = handled[own];
    if (role === undefined) return [];
    const { before, after } = laying[own++];
    if (role === 'edge') return roundEdges.has(own) ? trimBefore(n) : [];
    const isCovered = stops[n] === null && handled[own] === 'edge';
    const what = after ?? (isCovered ? COVERED : AFTER)[role];
    return [
      ...before.map((what): Halt => ({ before: n, what })),
      ...(what && n < stops.length ? [{ before: n + 1, what }] : []),
    ];
  };
  const ofNew = ({ kind, runs }: Stop, n: number): Halt[] => {
    const after = (what: string): Halt[] => [{ before: n + 1, what }];
    const ribbon = laid.get(runs);
    if (ribbon) return after(`Lay the ${ribbon} along the line just sewn.`);
    if (kind === 'placement' && hooping.outline) return after('Lay the block on the outline just sewn.');
    if (kind === 'edge' && outline === 'trim') return trimBefore(n);
    if (kind !== 'alignment') return [];
    const look = after('Look whether the block lies right, and move it until it does.');
    return hooping.crosses ? look : [{ before: n, what: WITHOUT_THREAD }, ...look];
  };
  const halts = stops.flatMap((stop, i) => (stop ? ofNew(stop, i + 1) : ofOwn(i + 1)));
  const pulled = [
    ...(stops.some((stop) => stop?.kind === 'basting') ? ['the basting box'] : []),
    ...(hooping.crosses && stops.some((stop) => stop?.kind === 'alignment') ? ['the crosses'] : []),
  ];
  const last = `When all is sewn, pull out ${pulled.join(' and ')}.`;
  return [...halts, ...(pulled.length ? [{ before: stops.length + 1, what: last }] : [])];
}

const WITHOUT_THREAD = 'Step through the next stop without thread, hands away from the needle.';

/** A line sewn twice between a placement line and an edge only holds what is laid on top, as a tack-down does. */
const asHandled = (roles: readonly StopRole[], roundEdges: ReadonlySet<number>): Role[] =>
  roles.map(({ role }, i) => {
    const [last, next] = [roles[i - 1], roles[i + 1]];
    const isOnTop = last?.role === 'placement' && next?.role === 'edge' && !roundEdges.has(i + 2);
    return role === 'seam' && isOnTop ? 'tack-down' : role;
  });

/** An edge reaches at least so far across the block that it goes round. */
const ROUND = 0.9;

/** Which of the block's own stops, from 1, are an edge round the whole block. */
function edgesRound({ block: { existing, map } }: Dressed, roles: readonly StopRole[]): ReadonlySet<number> {
  const edges = existing ? stopsOf(existing).filter((_, i) => roles[i]?.role === 'edge') : [];
  const round = edges.filter(({ runs }) => {
    const { left, right, top, bottom } = boxOf(runs);
    return right - left >= ROUND * map.width && bottom - top >= ROUND * map.height;
  });
  return new Set(round.map(({ stop }) => stop));
}

/** What is laid by hand along which placement line: 'Lace, 8 mm wide'. */
function laidAlong({ lines, dressing }: Dressed): ReadonlyMap<Stop['runs'], string> {
  const laid = new Map<Runs, string>();
  for (const { treatment, layers } of lines) {
    const what = dressing.treatments[treatment].laid;
    if (!what) continue;
    for (const { kind, runs } of layers)
      if (kind === 'placement') laid.set(runs, `${what.name} (${what.width} mm wide)`);
  }
  return laid;
}
