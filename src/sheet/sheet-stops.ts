import { ROLE_NAMES, type Role, type StopRole } from '../block/roles/role.js';
import { type Stop, stopsInOrder } from '../design/design.js';
import type { Dressed } from '../dress.js';
import { stopsOf } from '../formats/stops.js';
import { type Box, boxesMeet, boxOf } from '../geometry/box.js';
import { nearestOnSegment } from '../geometry/nearest.js';
import type { Point } from '../geometry/point.js';
import { type Points, pointAt, pointCount } from '../geometry/polyline.js';
import type { Runs } from '../needle/run.js';
import type { DressReport, StopLine } from '../report/dress-report.js';
import { firstStitches } from '../report/first-stitches.js';
import { counted } from '../report/table.js';

/** A color stop as the sheet tells it: the report's line, and what finds it again at the machine. */
export interface SheetStop extends StopLine {
  /** running number of the stitch that it begins with; null where it has none */
  readonly firstStitch: number | null;
  /** the line that it begins on; null where it is on none */
  readonly beginsOn: number | 'outline' | null;
  /** whether it can be left out, and which stops have to be left out with it */
  readonly optional: boolean;
  readonly together: readonly number[];
}

/** A stop of the block's own is on a line that it sews this near to, mm. */
const ON_SEAM = 1;
/** What is sewn along lines of the block; a tack-down only crosses them. */
const ON_LINES: ReadonlySet<Role> = new Set(['map', 'placement', 'seam', 'edge']);

/** @param roles of the block's own stops; none for a drawing */
export function sheetStops(
  dressed: Dressed,
  { stops }: DressReport,
  roles: readonly StopRole[],
): SheetStop[] {
  const first = firstStitches(stops);
  const inOrder = stopsInOrder(dressed.design);
  const own = ownRuns(dressed);
  const dependents = dependentStops(dressed, inOrder);
  const lines = linesOf(dressed);
  const byId = new Map(lines.map((line) => [line.id, line]));
  let k = 0;
  return stops.map((line, i): SheetStop => {
    const stop = inOrder[i];
    const firstStitch = first[i];
    if (stop === null) {
      const role = roles[k]?.role;
      const begun = own[k++];
      return {
        ...line,
        title: role ? `Of the block: ${ROLE_NAMES[role]}` : 'Of the block',
        firstStitch,
        beginsOn: role && ON_LINES.has(role) && begun ? mostlyOn(begun, lines) : null,
        optional: false,
        together: [],
      };
    }
    const among = stop.seams.flatMap((id) => byId.get(id) ?? []);
    return {
      ...line,
      firstStitch,
      beginsOn: nearestLine(startOf(stop.runs), among, Number.POSITIVE_INFINITY),
      optional: isOptional(stop, dressed),
      together: dependents.get(i) ?? [],
    };
  });
}

/** 'Feather, seam 6' and, below it, what of it is sewn. */
export function workedIn({ repeats, figures }: StopLine): string {
  if (repeats) return `${repeats.repeats} repeats of ${repeats.repeatMm.toFixed(1)} mm`;
  return figures === undefined ? '' : counted(figures, 'figure');
}

interface Line {
  readonly id: number | 'outline';
  readonly points: Points;
  readonly box: Box;
}

function linesOf({ block: { map } }: Dressed): Line[] {
  const outline = map.outline ? [{ id: 'outline' as const, points: map.outline.points }] : [];
  return [...map.seams, ...outline].map(({ id, points }) => ({ id, points, box: boxOf([points]) }));
}

/** The line nearest to a place, if it is nearer than `within` mm; of equals the first. Lines whose box is further are not looked at. */
function nearestLine(at: Point, lines: readonly Line[], within: number): number | 'outline' | null {
  let best: number | 'outline' | null = null;
  let least = within;
  for (const { id, points, box } of lines) {
    if (!isWithin(at, box, least)) continue;
    for (let i = 0; i + 1 < pointCount(points); i++) {
      const { distance } = nearestOnSegment(at, pointAt(points, i), pointAt(points, i + 1));
      if (distance >= least) continue;
      least = distance;
      best = id;
    }
  }
  return best;
}

const isWithin = ([x, y]: Point, { left, top, right, bottom }: Box, mm: number): boolean =>
  x > left - mm && x < right + mm && y > top - mm && y < bottom + mm;

const startOf = ({ xy }: Runs): Point => [xy[0], xy[1]];

/** What each of the block's own stops sews first, in the block's frame; null where it sews nothing. */
function ownRuns({ block: { existing, origin }, design }: Dressed): (Points | null)[] {
  if (!existing) return [];
  const stops = stopsOf(existing).slice(0, (design.before?.stops ?? 0) + (design.after?.stops ?? 0));
  return stops.map(({ runs: [run] }) => run?.map((value, i) => value - origin[i % 2]) ?? null);
}

/** The line that most of a run lies on: seams are sewn from beyond their ends, out in the allowance and across others. */
function mostlyOn(run: Points, lines: readonly Line[]): number | 'outline' | null {
  const counts = new Map<number | 'outline', number>();
  const { left, top, right, bottom } = boxOf([run]);
  const around = {
    left: left - ON_SEAM,
    top: top - ON_SEAM,
    right: right + ON_SEAM,
    bottom: bottom + ON_SEAM,
  };
  const near = lines.filter(({ box }) => boxesMeet(box, around));
  for (let i = 0; i < pointCount(run); i++) {
    const found = nearestLine(pointAt(run, i), near, ON_SEAM);
    if (found !== null) counts.set(found, (counts.get(found) ?? 0) + 1);
  }
  return [...counts].reduce<[number | 'outline' | null, number]>(
    (most, one) => (one[1] > most[1] ? one : most),
    [null, 0],
  )[0];
}

/** Decoration can be left out; what lays, holds or covers something cannot. */
function isOptional(stop: Stop, { dressing, lines }: Dressed): boolean {
  if (stop.kind === 'placement') return false;
  if (stop.kind === 'edge') return dressing.outline !== 'trim';
  const line = lines.find(({ layers }) => layers.some(({ runs }) => runs === stop.runs));
  return !(line && stop.kind !== 'accent' && dressing.treatments[line.treatment].laid);
}

/** Of each stop with a row, from 0, the stops, from 1, of the accents that sit on it alone. */
function dependentStops(
  { lines, dressing }: Dressed,
  stops: readonly (Stop | null)[],
): Map<number, number[]> {
  const at = new Map(stops.flatMap((stop, i) => (stop ? [[stop.runs, i] as const] : [])));
  const found = new Map<number, number[]>();
  for (const { fit, layers, treatment } of lines) {
    const { accents = [] } = dressing.treatments[treatment];
    const rows = fit.layers.map(({ kind, index }) => (kind === 'row' ? index : null));
    layers.forEach(({ kind, runs }, l) => {
      const row = kind === 'accent' ? rows.indexOf(accents[fit.layers[l].index].row) : -1;
      const [of, own] = [row < 0 ? undefined : at.get(layers[row].runs), at.get(runs)];
      if (of === undefined || own === undefined) return;
      found.set(of, [...(found.get(of) ?? []), own + 1]);
    });
  }
  return found;
}
