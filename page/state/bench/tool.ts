import { batch, signal } from '@preact/signals';
import type { LegKind } from '../../../src/stitches/stitch.js';
import { told } from '../work.js';
import { legAdded, legsOf } from './legs.js';
import { changeStitch, chosen, draft } from './on-bench.js';
import { bendAdded, pointAdded } from './points.js';

/** What a touch on the sheet does: it chooses, makes a needle point, or lays a leg from one touch to the next. */
export type Tool = 'choose' | 'point' | LegKind;

export const tool = signal<Tool>('choose');
/** Where the leg that is being laid begins. */
export const legFrom = signal<{ readonly name: string; readonly u: number; readonly v: number } | null>(null);

export function takeTool(taken: Tool): void {
  tool.value = tool.value === taken ? 'choose' : taken;
  legFrom.value = null;
}

/** A touch on a point, or on bare cloth where one is made. @param name null on bare cloth */
export function touchSheet(name: string | null, u: number, v: number): void {
  const kind = tool.value;
  if (kind === 'choose') {
    chosen.value = name;
    return;
  }
  const now = draft.value;
  if (!now) return;
  let record = now.record;
  let at = name;
  if (at === null) ({ record, name: at } = pointAdded(record, u, v));
  const from = legFrom.value;
  if (kind !== 'point' && (from || kind === 'knot')) {
    record = legAdded(record, kind, [from?.name ?? at, at]);
    const places = legsOf(record);
    if (kind === 'curve' && from) record = bentAside(record, places[places.length - 1], from, { u, v });
  }
  batch(() => {
    changeStitch(() => record);
    chosen.value = at;
    if (kind === 'point') tool.value = 'choose';
    legFrom.value = kind === 'point' || kind === 'knot' || from ? null : { name: at, u, v };
    told.value = legFrom.value ? `From ${at}: touch where it ends` : 'Done';
  });
}

/** A new curve bends a little to its left, or nobody would see that it is one. */
function bentAside(
  record: Parameters<typeof bendAdded>[0],
  place: Parameters<typeof bendAdded>[1],
  from: { readonly u: number; readonly v: number },
  to: { readonly u: number; readonly v: number },
) {
  const [du, dv] = [to.u - from.u, to.v - from.v];
  return bendAdded(record, place, [from.u + du / 2 - dv / 4, from.v + dv / 2 + du / 4]).record;
}
