import type { SeamMap } from './block/seam-map.js';
import type { Finding } from './finding.js';
import type { LineAsk } from './fit/ask.js';
import { resized, seamOf } from './fit/seam-reference.js';
import { reachOf, sized } from './fit/sized.js';
import type { Dressing, Row, ThreadChoice, Treatment } from './formats/dressing.js';
import { InputError } from './input-error.js';
import { nearestName } from './stitches/nearest-name.js';
import type { Stitch } from './stitches/stitch.js';

/** On a trimmed block an edge stays this far inside, mm. Common practice. */
const EDGE_INSIDE = 0.7;

/** A row of the dressing, ready to be fitted. */
export interface AskedRow {
  readonly treatment: number;
  readonly row: number;
  readonly ask: LineAsk;
  readonly thread: ThreadChoice;
}

/** What the dressing asks, line by line; a treatment whose seam is no longer there becomes a finding. */
export function askedRows(
  map: SeamMap,
  dressing: Dressing,
  library: ReadonlyMap<string, Stitch>,
  findings: Finding[],
): AskedRow[] {
  const references = resized(
    map,
    dressing.treatments.map(({ seam }) => seam),
  );
  const taken = new Map<number | 'outline', number>();
  return dressing.treatments.flatMap((treatment, t): AskedRow[] => {
    const seam = seamOf(map, references[t]);
    const where = `treatment ${t + 1}`;
    const name = treatment.seam.id === 'outline' ? 'the outline' : `seam ${treatment.seam.id}`;
    if (seam === null) {
      findings.push({
        level: 'error',
        code: 'lost-treatment',
        message: `${where} was made for ${name}, which is not in this block; give it the number of another seam`,
        at: treatment.seam.middle ?? undefined,
      });
      return [];
    }
    const id = seam === 'outline' ? seam : seam.id;
    if (taken.has(id)) {
      throw new InputError(
        'seam-twice',
        where,
        `${name} already has treatment ${taken.get(id)! + 1}`,
        'give each seam one treatment',
      );
    }
    taken.set(id, t);
    if (treatment.rows.length !== 1) {
      throw new InputError('rows', where, `it has ${treatment.rows.length} rows`, 'give it one row');
    }
    return treatment.rows.map((row, r) => askedRow(map, dressing, library, treatment, row, t, r, id));
  });
}

function askedRow(
  map: SeamMap,
  dressing: Dressing,
  library: ReadonlyMap<string, Stitch>,
  treatment: Treatment,
  row: Row,
  t: number,
  r: number,
  seam: number | 'outline',
): AskedRow {
  const where = `treatment ${t + 1} row ${r + 1}`;
  const stitch = library.get(row.stitch);
  if (!stitch) {
    throw new InputError(
      'unknown-stitch',
      where,
      `there is no stitch "${row.stitch}"`,
      `did you mean "${nearestName(row.stitch, [...library.keys()])}"?`,
    );
  }
  const thread = dressing.threads[row.thread];
  if (!thread) {
    throw new InputError(
      'unknown-thread',
      where,
      `there is no thread ${row.thread}`,
      `threads count from 0 to ${dressing.threads.length - 1}`,
    );
  }
  const at = sized(stitch, row.parameters);
  // Sizes out of range are refused here, before anything is fitted.
  const unit = at.build(1, at.repeat);
  const side = treatment.side ?? (seam === 'outline' ? 'right' : roomierSide(map, seam));
  const inside = dressing.outline === 'trim' ? EDGE_INSIDE : 0;
  const { left } = reachOf(unit, at.glide, side === 'left' ? 1 : -1);
  return {
    treatment: t,
    row: r,
    thread,
    ask: {
      seam,
      sized: at,
      side,
      reverse: treatment.reverse,
      manner: treatment.ends ?? dressing.ends,
      shortOf: new Set(),
      passes: row.passes,
      // The outline runs clockwise, cloth to the right: an edge is moved in until nothing of it lies outside.
      offset: seam === 'outline' ? row.offset - left - inside : row.offset,
    },
  };
}

/** One-sided stitches stand on the larger patch, where there is more room, when nothing says which was sewn later. */
function roomierSide(map: SeamMap, seam: number): 'left' | 'right' {
  const areas = { left: 0, right: 0 };
  for (const { from, to, left, right } of map.seams[seam - 1].sides) {
    if (left !== null) areas.left += (to - from) * map.patches[left - 1].area;
    if (right !== null) areas.right += (to - from) * map.patches[right - 1].area;
  }
  return areas.right > areas.left ? 'right' : 'left';
}
