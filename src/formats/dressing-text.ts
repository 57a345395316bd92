import type { DensityAsked } from './density-asked.js';
import type {
  Accent,
  BlockSource,
  Dressing,
  Hooping,
  KeepClear,
  Machine,
  PatchFabric,
  PlacedOrnament,
  Row,
  SeamAt,
  SeamReference,
  ThreadChoice,
  Treatment,
  Work,
} from './dressing.js';
import { laidOutJson } from './json-text.js';

/**
 * The text of a `.dressing.json` file: keys in a fixed order, so that equal dressings give equal text, and laid out to be
 * read and edited by people.
 */
export function writeDressing(dressing: Dressing): string {
  const {
    format,
    version,
    block,
    ends,
    outline,
    gap,
    treatments,
    ornaments,
    keepClear,
    hooping,
    fabrics,
    threads,
    hoop,
    machine,
    after,
    stopPer,
    pull,
    density,
    seed,
    byHand,
    bare,
    order,
    library,
  } = dressing;
  const inOrder = said({
    format,
    version,
    block: blockInOrder(block),
    ends,
    outline,
    gap,
    hoop: hoop && { width: hoop.width, height: hoop.height },
    machine: machine && machineInOrder(machine),
    after,
    stopPer,
    pull,
    density: density && densityInOrder(density),
    seed,
    byHand,
    order,
    library,
    threads: threads.map(threadInOrder),
    treatments: treatments.map(treatmentInOrder),
    ornaments: ornaments?.map(ornamentInOrder),
    keepClear: keepClear?.map(keptClearInOrder),
    hooping: hooping && hoopingInOrder(hooping),
    fabrics: fabrics?.map(fabricInOrder),
    bare: bare?.map(referenceInOrder),
  });
  return `${laidOutJson(inOrder)}\n`;
}

const blockInOrder = (block: BlockSource) =>
  said({
    file: block.file,
    digest: block.digest,
    stops: block.stops,
    snap: block.snap,
    through: block.through.map(seamAtInOrder),
    join: block.join?.map(({ at, seams }) => ({ at, seams })),
    split: block.split?.map(seamAtInOrder),
    scale: block.scale,
    turn: block.turn,
    leaveOut: block.leaveOut,
    roles: block.roles?.map(({ stop, role }) => ({ stop, role })),
    svg: block.svg,
    traced: block.traced,
  });

const threadInOrder = ({ name, hex, moreHex, weight, code, finish }: ThreadChoice) =>
  said({ name, hex, moreHex, weight, code, finish });

const fabricInOrder = ({ patch, colors, busyness, picture }: PatchFabric) =>
  said({
    patch: { id: patch.id, at: patch.at },
    colors: colors.map(({ hex, share }) => ({ hex, share })),
    busyness,
    picture,
  });

const machineInOrder = (machine: Machine) =>
  said({
    needles: machine.needles,
    stitchesPerMinute: machine.stitchesPerMinute,
    heavyStitchesPerMinute: machine.heavyStitchesPerMinute,
    trimSeconds: machine.trimSeconds,
    changeMinutes: machine.changeMinutes,
  });

const densityInOrder = ({ cloth, holes, layers, inOneHole, cover }: DensityAsked) =>
  said({ cloth, holes, layers, inOneHole, cover });

const hoopingInOrder = ({ outline, basting, align, crosses }: Hooping) =>
  said({ outline, basting, align, crosses });

const seamAtInOrder = ({ at, seam }: SeamAt) => ({ at, seam });

const referenceInOrder = ({ id, middle, ends }: SeamReference) => ({ id, middle, ends });

const treatmentInOrder = ({ seam, ends, corner, side, reverse, pinned, ...work }: Treatment) =>
  said({
    seam: referenceInOrder(seam),
    ...workInOrder(work),
    ends,
    corner,
    side,
    reverse,
    pinned,
  });

/** Rows, accents and what is laid, with what was not said left out. */
export const workInOrder = ({ rows, accents, laid, guide }: Work) =>
  said({
    rows: rows.map(rowInOrder),
    accents: accents?.map(accentInOrder),
    laid: laid && { name: laid.name, width: laid.width, hex: laid.hex, thread: laid.thread },
    guide: guide && { shape: guide.shape, height: guide.height, length: guide.length },
  });

const rowInOrder = (row: Row) =>
  said({
    stitch: row.stitch,
    parameters: byName(row.parameters),
    thread: row.thread,
    moreThreads: row.moreThreads,
    passes: row.passes,
    heavy: row.heavy,
    offset: row.offset,
    flip: row.flip,
    times: row.times,
    step: row.step,
  });

const accentInOrder = (accent: Accent) =>
  said({
    row: accent.row,
    seat: accent.seat,
    ornament: accent.ornament,
    byHand: accent.byHand,
    parameters: byName(accent.parameters),
    graded: accent.graded?.map(byName),
    thread: accent.thread,
    moreThreads: accent.moreThreads,
    passes: accent.passes,
    heavy: accent.heavy,
    every: accent.every,
    from: accent.from,
    turn: accent.turn,
    away: accent.away,
  });

const ornamentInOrder = (placed: PlacedOrnament) =>
  said({
    ornament: placed.ornament,
    at: placed.at,
    patch: typeof placed.patch === 'object' ? { at: placed.patch.at } : placed.patch,
    turn: placed.turn,
    parameters: byName(placed.parameters),
    thread: placed.thread,
    moreThreads: placed.moreThreads,
    passes: placed.passes,
    heavy: placed.heavy,
    pinned: placed.pinned,
  });

const keptClearInOrder = ({ name, polygon, circle, stops }: KeepClear) =>
  said({ name, polygon, circle: circle && { at: circle.at, radius: circle.radius }, stops });

const byName = (parameters: Readonly<Record<string, number>>) =>
  Object.fromEntries(Object.entries(parameters).sort(([a], [b]) => (a < b ? -1 : 1)));

const said = (record: Record<string, unknown>) =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));
