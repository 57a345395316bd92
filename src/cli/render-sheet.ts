import type { Role } from '../block/roles/role.js';
import type { Dressed } from '../dress.js';
import type { BlockSource } from '../formats/dressing.js';
import type { DressReport } from '../report/dress-report.js';
import type { SheetAsk, SheetTold } from '../sheet/sew-sheet.js';
import type { SheetOptions } from './sheet-options.js';

/** What a sheet is made by: how it is printed, and what is known of the work beside it. */
export interface SheetAsked extends SheetOptions {
  readonly numbers?: SheetAsk['numbers'];
}

/** The sew sheet of what was dressed. */
export async function renderSheet(
  dressed: Dressed,
  report: DressReport,
  { paper = 'a4', picture, numbers }: SheetAsked,
): Promise<{ readonly bytes: Uint8Array; readonly told: SheetTold }> {
  const [{ sewSheet }, { recognizeStops }] = await Promise.all([
    import('../sheet/sew-sheet.js'),
    import('../block/roles/recognize.js'),
  ]);
  const { existing } = dressed.block;
  const roles = existing ? recognizeStops(existing, rolesSaid(dressed.dressing.block)).roles : [];
  return sewSheet(dressed, report, roles, { paper, picture, numbers });
}

/** What the maker says of the block's own stops, which counts those of the whole file, by their places once some are left out. */
function rolesSaid({ roles = [], leaveOut = [] }: BlockSource): ReadonlyMap<number, Role> {
  const out = [...new Set(leaveOut)];
  const kept = roles.filter(({ stop }) => !out.includes(stop));
  return new Map(kept.map(({ stop, role }) => [stop - out.filter((one) => one < stop).length, role]));
}
