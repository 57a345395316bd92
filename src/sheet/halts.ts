import type { Role, StopRole } from '../block/roles/role.js';
import { type Stop, stopsInOrder } from '../design/design.js';
import type { Dressed } from '../dress.js';
import type { Runs } from '../needle/run.js';

/** What the maker does while the machine halts. */
export interface Halt {
  /** before which stop, from 1; one more than there are is at the end */
  readonly before: number;
  readonly what: string;
}

/**
 * What a block that is pieced in the hoop asks for between its own stops, by what each was recognized as. Common practice;
 * the block's own instructions come first.
 */
const BEFORE: Partial<Record<Role, string>> = {
  edge: 'Trim excess now: the block close to its outline, all layers that the edge is to cover.',
};
const AFTER: Partial<Record<Role, string>> = {
  map: 'Lay the first piece of fabric.',
  placement: 'Lay the fabric over the line just sewn.',
  seam: 'Trim excess now, fold the piece over its seam and press it flat.',
  'tack-down': 'Trim excess now, close outside the line just sewn.',
};

/**
 * Where the work is handled between two stops: as the block's own stops ask for it, and where the new ones need something
 * laid, looked at or pulled out.
 *
 * @param roles of the block's own stops; none for a drawing
 */
export function haltsOf(dressed: Dressed, roles: readonly StopRole[]): Halt[] {
  const stops = stopsInOrder(dressed.design);
  const laid = laidAlong(dressed);
  const { hooping = {}, outline } = dressed.dressing;
  let own = 0;
  let trimmed = false;
  const halts = stops.flatMap((stop, i): Halt[] => {
    const n = i + 1;
    const before = (what: string | undefined): Halt[] => (what ? [{ before: n, what }] : []);
    const after = (what: string | undefined): Halt[] => (what ? [{ before: n + 1, what }] : []);
    if (stop === null) {
      const role = roles[own++]?.role;
      if (role === undefined) return [];
      const first = role === 'edge' && trimmed ? undefined : BEFORE[role];
      if (role === 'edge') trimmed = true;
      const next = stops[n] === undefined ? undefined : AFTER[role];
      return [...before(first), ...after(next)];
    }
    if (stop.kind === 'placement' && hooping.outline) return after('Lay the block on the outline just sewn.');
    if (stop.kind === 'alignment') {
      const look = 'Look whether the block lies right, and move it until it does.';
      return hooping.crosses
        ? after(look)
        : [
            ...before('Step through the next stop without thread, hands away from the needle.'),
            ...after(look),
          ];
    }
    if (stop.kind === 'edge' && outline === 'trim' && !trimmed) {
      trimmed = true;
      return before(BEFORE.edge);
    }
    const ribbon = laid.get(stop.runs);
    return ribbon ? after(`Lay the ${ribbon} along the line just sewn.`) : [];
  });
  const pulled = stops.some(
    (stop) => stop?.kind === 'basting' || (stop?.kind === 'alignment' && hooping.crosses),
  );
  const end: Halt[] = pulled
    ? [{ before: stops.length + 1, what: 'When all is sewn, pull out the basting and the crosses.' }]
    : [];
  return [...halts, ...end];
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
