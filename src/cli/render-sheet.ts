import type { Role } from '../block/roles/role.js';
import type { Dressed } from '../dress.js';
import type { DressReport } from '../report/dress-report.js';
import type { SheetAsk, SheetTold } from '../sheet/sew-sheet.js';
import type { SheetOptions } from './sheet-options.js';

/** What a sheet is made by: how it is printed, and what is known of the work beside it. */
export interface SheetAsked extends SheetOptions {
  /** what the maker said of the block's own stops */
  readonly role?: ReadonlyMap<number, Role>;
  readonly leaveOut?: readonly number[];
  readonly numbers?: SheetAsk['numbers'];
}

/** The sew sheet of what was dressed. */
export async function renderSheet(
  dressed: Dressed,
  report: DressReport,
  { paper = 'a4', picture, role, leaveOut, numbers }: SheetAsked,
): Promise<{ readonly bytes: Uint8Array; readonly told: SheetTold }> {
  const [{ sewSheet }, { recognizeStops }] = await Promise.all([
    import('../sheet/sew-sheet.js'),
    import('../block/roles/recognize.js'),
  ]);
  const { existing } = dressed.block;
  // what the maker says counts the stops of the whole file
  const said = leaveOut ? undefined : role;
  const roles = existing ? recognizeStops(existing, said).roles : [];
  return sewSheet(dressed, report, roles, { paper, picture, numbers });
}
