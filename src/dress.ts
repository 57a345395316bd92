import type { Ground } from './asked/free-place.js';
import { heavinessFindings } from './asked/heaviness.js';
import { keptAreas } from './asked/keep-clear.js';
import { accentNames, askedLayer } from './asked/layers.js';
import { type AskedLine, askedLines } from './asked/lines.js';
import { placedOrnaments } from './asked/ornaments.js';
import type { Block } from './block/block.js';
import type { SeamMap } from './block/seam-map.js';
import { accentsLeftOut } from './check/accents-left-out.js';
import { bareLines } from './check/bare-lines.js';
import { type Field, roomFindings, sewnField } from './check/hoop.js';
import { shortByOrder, treatmentsInOrder } from './check/order-asked.js';
import { ringOfTucks } from './check/ring-of-tucks.js';
import { handOrderLost, nothingLeft } from './check/sewn-lines.js';
import { stopsKeptApart } from './check/stops-of-threads.js';
import type { Design, Stop } from './design/design.js';
import { splitAfter } from './design/existing.js';
import { hoopingStops } from './design/hooping.js';
import { type BrokenTuck, sewingOrder } from './design/order.js';
import { membersOfStops, stopsOfLines } from './design/stops-of-lines.js';
import { walkedFigures } from './design/walk-pieces.js';
import { type Finding, worstFirst } from './finding.js';
import type { LineAsk } from './fit/ask.js';
import type { Chain, Layer, Mark, SeamFit } from './fit/fit.js';
import { fitLines } from './fit/fit-lines.js';
import type { LineFit } from './fit/line-fit.js';
import { Memory } from './fit/memory.js';
import type { Dressing, ThreadChoice } from './formats/dressing.js';
import type { KeptArea } from './formats/line-drawing.js';
import { stopsOf } from './formats/stops.js';
import { InputError } from './input-error.js';
import { craftFor, threadWidth } from './needle/craft.js';
import type { Craft, Runs } from './needle/run.js';
import { sewChains, Workbench } from './needle/sew-chain.js';
import { placedWork, workedToHoop } from './placed.js';
import type { Progress } from './progress.js';
import type { Dictionary } from './stitches/dictionary.js';

/** Everything the main job makes, step by step, so that pictures, sheets and tests can show each of them. */
export interface Dressed {
  /** as large as it is to be and turned as it is to be */
  readonly block: Block;
  /** as given: its places are those of the block as drawn */
  readonly dressing: Dressing;
  /** in the order they are sewn */
  readonly lines: readonly DressedLine[];
  /** thread by thread */
  readonly ornaments: readonly DressedOrnament[];
  /** what stays clear */
  readonly keepClear: readonly KeptArea[];
  readonly design: Design;
  /** room that the block takes with all that is sewn on it, mm */
  readonly field: Field;
  /** worst first */
  readonly findings: readonly Finding[];
}

/** One treatment as fitted and as sewn. */
export interface DressedLine {
  /** index into dressing.treatments */
  readonly treatment: number;
  readonly fit: SeamFit;
  /** lines whose treatments lie over its ends */
  readonly tucksUnder: readonly (number | 'outline')[];
  /** one for each layer of the fit */
  readonly layers: readonly DressedLayer[];
}

/** One thread of a row, an accent or an ornament, as sewn: a color stop, unless nothing of it is left. */
export interface DressedLayer {
  readonly kind: Layer['kind'];
  readonly title: string;
  readonly thread: ThreadChoice;
  readonly runs: Runs;
}

/** One thread of a free-standing figure, as sewn. */
export interface DressedOrnament {
  /** index into dressing.ornaments, and which of the figure's threads, from 0 */
  readonly ornament: number;
  readonly nth: number;
  readonly title: string;
  readonly thread: ThreadChoice;
  /** as laid on the cloth */
  readonly chain: Chain;
  readonly runs: Runs;
}

/**
 * The main job: a block and a dressing in, color stops out. Pure: the same input gives the same result.
 *
 * @param progress told how far it is
 * @throws InputError when the dressing names a stitch, ornament, parameter, seat, seam or stop that does not exist
 */
export function dress(
  drawn: Block,
  asDrawn: Dressing,
  dictionary: Dictionary,
  progress: Progress = () => {},
): Dressed {
  if (asDrawn.block.scale === 'hoop') return dressToHoop(drawn, asDrawn, dictionary, progress);
  const { block, dressing } = placedWork(drawn, asDrawn);
  const keepClear = keptAreas(block, dressing);
  const asked = askedLines(block.map, dressing, dictionary, keepClear);
  const findings: Finding[] = [...block.findings, ...asked.findings, ...heavinessFindings(dressing)];
  const { fits, order } = fitInOrder(block.map, asked.lines, dressing, findings, progress);

  // What one seam teaches about the kinds of its units serves all others.
  const bench = new Workbench();
  const { pull } = dressing;
  const sewn = (chains: readonly Chain[], craft: Craft, lost: () => Finding): Runs => {
    const { runs, unordered } = sewChains(chains, craft, bench);
    if (unordered > 0) findings.push(lost());
    return runs;
  };
  const lines = order.map((k, nth): DressedLine => {
    progress(nth, order.length, 'sewing seams');
    const { treatment } = asked.lines[k];
    const { fit, tucksUnder } = fits[k];
    const layers = fit.layers.map((layer): DressedLayer => {
      const { title, thread, spread } = askedLayer(dressing, dictionary, treatment, layer);
      const asLaid = sewn(layer.chains, craftFor(thread.weight, { pull, spread }), () =>
        handOrderLost(fit.seam, title),
      );
      const runs = layer.kind === 'accent' ? walkedFigures(asLaid, threadWidth(thread.weight)) : asLaid;
      return { kind: layer.kind, title, thread, runs };
    });
    return { treatment, fit, tucksUnder, layers };
  });
  const placed = placedOrnaments(dressing, dictionary, groundOf(block.map, dressing, lines, keepClear));
  findings.push(...placed.findings);
  const ornaments = placed.layers.map(({ spread, ...layer }): DressedOrnament => {
    const { runs } = sewChains([layer.chain], craftFor(layer.thread.weight, { pull, spread }), bench);
    return { ...layer, runs };
  });

  findings.push(...fits.flatMap((fit) => fit.findings));
  findings.push(
    ...nothingLeft(
      lines.map(({ fit }) => fit),
      findings,
    ),
  );
  const worked = lines.map(({ fit, layers }, i) => ({ ask: asked.lines[order[i]].ask, fit, layers }));
  findings.push(...bareLines(block.map, worked, keepClear, findings));
  findings.push(
    ...lines.flatMap(({ fit, treatment }) =>
      accentsLeftOut(fit, accentNames(dressing.treatments[treatment], dictionary)),
    ),
  );
  const before = hoopingStops(block.map, dressing.hooping ?? {});
  const stops = stopsOfLines(...toBeStops({ block, dressing, lines, ornaments }));
  const design = designOf(block, dressing, [...before, ...stops]);
  findings.push(...stopsKeptApart(design, dressing.stopPer ?? 'row'));
  const field = fieldOf(block, design);
  const unbasted = { ...design, stops: design.stops.filter(({ kind }) => kind !== 'basting') };
  findings.push(...roomFindings(dressing, block.map, field, fieldOf(block, unbasted)));
  return {
    block,
    dressing: asDrawn,
    lines,
    ornaments,
    keepClear,
    design,
    field,
    findings: worstFirst(findings),
  };
}

/** The main job on a block made as large as its hoop takes it. */
function dressToHoop(block: Block, dressing: Dressing, dictionary: Dictionary, progress: Progress): Dressed {
  const { worked, scale } = workedToHoop(block.map, dressing, (scaled) => {
    const dressed = dress(block, scaled, dictionary, progress);
    return { worked: dressed, field: dressed.field };
  });
  const { width, height } = worked.block.map;
  const size = `${width.toFixed(1)} x ${height.toFixed(1)} mm`;
  const takes = `${size}, which is what the hoop takes`;
  const message =
    scale === 1
      ? `the block keeps its size, ${takes}`
      : `the block is made ${scale} times as large, ${takes}; stitches keep their size`;
  const note: Finding = { level: 'note', code: 'made-to-fit', message };
  return { ...worked, dressing, findings: worstFirst([...worked.findings, note]) };
}

type Sewn = Pick<Dressed, 'block' | 'dressing' | 'lines' | 'ornaments'>;

/** What the new color stops are made of, and how. */
const toBeStops = ({ block, dressing, lines, ornaments }: Sewn): Parameters<typeof stopsOfLines> => [
  lines.map(({ fit, tucksUnder, layers }) => ({ seam: fit.seam, tucksUnder, layers })),
  ornaments.map(({ title, thread, runs }): Stop => ({ title, kind: 'ornament', seams: [], thread, runs })),
  {
    by: dressing.stopPer ?? 'row',
    wanted: treatmentsInOrder(dressing).flatMap((t) => {
      const place = lines.findIndex(({ treatment }) => treatment === t);
      return place < 0 ? [] : [place];
    }),
    width: threadWidth,
    isLate: (seam) => isLate(block, dressing, seam),
  },
];

/** The new color stops, each as the rows, accents and ornaments that it sews, with their own runs. */
export const membersOfNewStops = (sewn: Sewn): Stop[][] => membersOfStops(...toBeStops(sewn));

/** The room that a block takes with all that is sewn on it. */
const fieldOf = ({ map, existing, origin }: Block, { stops }: Design): Field =>
  sewnField(map, [
    ...stops.map(({ runs }) => runs.xy),
    ...(existing ? stopsOf(existing) : []).flatMap(({ runs }) =>
      // what one stray jump reaches is not sewn
      runs.map((run) => run.subarray(2).map((value, i) => value - origin[i % 2])),
    ),
  ]);

/** What lies on the block before ornaments are placed. */
function groundOf(
  map: SeamMap,
  dressing: Dressing,
  lines: readonly DressedLine[],
  keepClear: readonly KeptArea[],
): Ground {
  return {
    map,
    thread: lines.flatMap(({ layers }) => layers.map(({ runs }) => runs)),
    laid: lines.flatMap(({ treatment, layers }) => {
      const width = dressing.treatments[treatment].laid?.width ?? 0;
      return layers.flatMap(({ kind, runs }) => (kind === 'placement' ? [{ line: runs, width }] : []));
    }),
    marks: lines.flatMap(({ fit }) => fit.marks),
    keepClear,
  };
}

/** Fits every line and puts them in sewing order; where tucks go round in a ring, one end stops short instead. */
function fitInOrder(
  map: SeamMap,
  asked: readonly AskedLine[],
  dressing: Dressing,
  findings: Finding[],
  progress: Progress,
): { fits: readonly LineFit[]; order: readonly number[] } {
  const rules = { gap: dressing.gap, outline: dressing.outline };
  let asks: readonly LineAsk[] = asked.map(({ ask }) => ask);
  const wanted = treatmentsInOrder(dressing).flatMap((t) => {
    const line = asked.findIndex(({ treatment }) => treatment === t);
    return line < 0 ? [] : [line];
  });
  const moved = new Set(wanted.map((line) => asks[line].seam));
  const isByOrder = ({ seam, under }: BrokenTuck) => moved.has(seam) || moved.has(under);
  // Every round ends at least one tuck for good, so that this comes to an end.
  const memory = new Memory();
  for (;;) {
    const fits = fitLines(map, asks, rules, memory, progress);
    const { order, broken } = sewingOrder(
      fits.map(({ fit, tucksUnder }, k) => ({ treatment: k, seam: fit.seam, tucksUnder })),
      wanted,
    );
    if (broken.length === 0) return { fits, order };
    findings.push(...broken.map((one) => (isByOrder(one) ? shortByOrder(one) : ringOfTucks(one))));
    asks = asks.map((ask, k) => {
      const under = broken.filter(({ treatment }) => treatment === k).map((one) => one.under);
      return under.length ? { ...ask, shortOf: new Set([...ask.shortOf, ...under]) } : ask;
    });
  }
}

/** What is put on by hand afterwards, line by line. */
export const marksOf = ({ lines }: Dressed): (Mark & { readonly seam: number | 'outline' })[] =>
  lines.flatMap(({ fit }) => fit.marks.map((mark) => ({ ...mark, seam: fit.seam })));

/** An edge goes over the edge that came with the block, unless the maker says where the new stops go in. */
const isLate = ({ existing }: Block, { after }: Dressing, seam: number | 'outline'): boolean =>
  existing !== null && after === null && seam === 'outline';

function designOf(block: Block, dressing: Dressing, all: readonly Stop[]): Design {
  const stops = all.filter(({ runs }) => runs.start.length > 1);
  const { width, height } = block.map;
  if (!block.existing) {
    if (dressing.after !== null) {
      throw new InputError('no-stops', 'after', 'a drawing has no color stops', 'leave it away');
    }
    return { before: null, after: null, stops, origin: [-width / 2, -height / 2], name: block.name };
  }
  const opened = splitAfter(block.existing, dressing.after ?? Math.max(...block.stops), '--after');
  const lies = ({ seams }: Stop) => seams.some((seam) => isLate(block, dressing, seam));
  const late = stops.filter(lies);
  return {
    before: opened.before,
    after: opened.after,
    stops: [...stops.filter((stop) => !lies(stop)), ...late],
    late: late.length,
    origin: block.origin,
    name: block.name,
  };
}
