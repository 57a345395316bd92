import { type AskedRow, askedRows } from './asked-rows.js';
import type { Block } from './block/block.js';
import type { SeamMap } from './block/seam-map.js';
import { bareSeam, type DressedLine } from './check/bare-seam.js';
import { hoopFindings } from './check/hoop.js';
import type { Design, Stop } from './design/design.js';
import { splitAfter } from './design/existing.js';
import { type BrokenTuck, sewingOrder } from './design/order.js';
import { type Finding, worstFirst } from './finding.js';
import type { LineAsk } from './fit/ask.js';
import type { SeamFit } from './fit/fit.js';
import { fitLines, type LineFit } from './fit/fit-lines.js';
import { reachOf } from './fit/sized.js';
import type { Dressing } from './formats/dressing.js';
import { InputError } from './input-error.js';
import { craftFor } from './needle/craft.js';
import type { Runs } from './needle/run.js';
import { sewChains, Workbench } from './needle/sew-chain.js';
import type { Stitch } from './stitches/stitch.js';

/** Everything the main job makes, step by step, so that pictures, sheets and tests can show each of them. */
export interface Dressed {
  readonly block: Block;
  readonly dressing: Dressing;
  /** in the order they are sewn */
  readonly rows: readonly DressedRow[];
  readonly design: Design;
  /** worst first */
  readonly findings: readonly Finding[];
}

/** One stitch along one line, as fitted and as sewn. */
export interface DressedRow {
  /** indices into dressing.treatments and into its rows */
  readonly treatment: number;
  readonly row: number;
  readonly fit: SeamFit;
  readonly runs: Runs;
}

/**
 * The main job: a block and a dressing in, color stops out. Pure: the same input gives the same result.
 *
 * @throws InputError when the dressing names a stitch, parameter, seam or stop that does not exist
 */
export function dress(block: Block, dressing: Dressing, library: ReadonlyMap<string, Stitch>): Dressed {
  const findings: Finding[] = [...block.findings];
  const asked = askedRows(block.map, dressing, library, findings);
  const { fits, order } = fitInOrder(block.map, asked, dressing, findings);

  // What one seam teaches about the kinds of its units serves all others.
  const bench = new Workbench();
  const rows = order.map((k): DressedRow => {
    const { treatment, row, thread } = asked[k];
    const { runs, unordered } = sewChains(fits[k].fit.chains, craftFor(thread.weight), bench);
    if (unordered > 0) findings.push(unorderedPasses(fits[k].fit));
    return { treatment, row, fit: fits[k].fit, runs };
  });
  const lines = order.map((k): DressedLine => {
    const { ask } = asked[k];
    const { scale } = fits[k].fit;
    const unit = ask.sized.build(scale, ask.sized.repeat * scale);
    const { left, right } = reachOf(unit, ask.sized.glide, 1);
    return { seam: ask.seam, reach: Math.max(left, right), short: ask.manner === 'short' };
  });
  const sewn = rows.map((row) => row.runs);
  findings.push(...fits.flatMap((fit) => fit.findings));
  findings.push(...unsewn(rows, findings));
  findings.push(...bareSeam(block.map, dressedOnly(lines, rows), sewn));
  findings.push(...hoopFindings(dressing.hoop, block.map));

  const titles = new Map(asked.map(({ ask }) => [ask.sized.stitch.name, ask.sized.stitch.title]));
  const design = designOf(block, dressing, rows, titles);
  return { block, dressing, rows, design, findings: worstFirst(findings) };
}

/** Fits every line and puts them in sewing order; where tucks go round in a ring, one end stops short instead. */
function fitInOrder(
  map: SeamMap,
  asked: readonly AskedRow[],
  dressing: Dressing,
  findings: Finding[],
): { fits: LineFit[]; order: readonly number[] } {
  const rules = { gap: dressing.gap, outline: dressing.outline };
  const fitAll = (asks: readonly LineAsk[]) => fitLines(map, asks, rules);
  const sortAll = (fits: readonly LineFit[]) =>
    sewingOrder(fits.map(({ fit, tucksUnder }, k) => ({ treatment: k, seam: fit.seam, tucksUnder })));
  const asks = asked.map(({ ask }) => ask);
  const fits = fitAll(asks);
  const { order, broken } = sortAll(fits);
  if (broken.length === 0) return { fits, order };
  const shortened = asks.map((ask, k) => ({
    ...ask,
    shortOf: new Set(broken.filter(({ treatment }) => treatment === k).map(({ under }) => under)),
  }));
  findings.push(...broken.map(ringOfTucks));
  const refitted = fitAll(shortened);
  return { fits: refitted, order: sortAll(refitted).order };
}

function ringOfTucks({ seam, under }: BrokenTuck): Finding {
  const name = (id: number | 'outline') => (id === 'outline' ? 'the outline' : `seam ${id}`);
  return {
    level: 'note',
    code: 'ring-of-tucks',
    message:
      `treatments tuck under each other in a ring, so the one on ${name(seam)} stops short of ${name(under)}; ` +
      'naming another seam that runs through a junction would open the ring',
    seam,
  };
}

/** Where no way through the legs keeps the order of the hand, the needle goes the shortest way instead. */
function unorderedPasses({ seam, stitch }: SeamFit): Finding {
  return {
    level: 'note',
    code: 'hand-order',
    message:
      `${seam === 'outline' ? 'outline' : `seam ${seam}`}: no way of the needle through ${stitch} keeps the order in ` +
      'which a hand works it, so some threads may cross the other way; another number of passes may allow it',
    seam,
  };
}

/** Rows of which nothing is left to sew, where no finding has said why yet: their ends were cut away. */
function unsewn(rows: readonly DressedRow[], findings: readonly Finding[]): Finding[] {
  const said = findings.filter(({ code }) => code === 'too-short' || code === 'tight-bend');
  const named = new Set(said.map(({ seam }) => seam));
  return rows
    .filter(({ runs, fit }) => runs.start.length < 2 && !named.has(fit.seam))
    .map(({ fit }) => ({
      level: 'warning',
      code: 'nothing-left',
      message:
        `${fit.seam === 'outline' ? 'outline' : `seam ${fit.seam}`}: nothing of its ${fit.stitch} is left between ` +
        'the treatments at its ends; a smaller stitch, or leaving it bare, would do',
      seam: fit.seam,
    }));
}

const dressedOnly = (lines: readonly DressedLine[], rows: readonly DressedRow[]): DressedLine[] =>
  lines.filter((_, i) => rows[i].runs.start.length > 1);

function designOf(
  block: Block,
  dressing: Dressing,
  rows: readonly DressedRow[],
  titles: ReadonlyMap<string, string>,
): Design {
  const stops = rows
    .filter((row) => row.runs.start.length > 1)
    .map(({ fit, treatment, row, runs }): Stop => {
      const { thread } = dressing.treatments[treatment].rows[row];
      const title = titles.get(fit.stitch)!;
      return fit.seam === 'outline'
        ? { title: `${title}, edge`, kind: 'edge', seams: [fit.seam], thread: dressing.threads[thread], runs }
        : {
            title: `${title}, seam ${fit.seam}`,
            kind: 'treatment',
            seams: [fit.seam],
            thread: dressing.threads[thread],
            runs,
          };
    });
  const { width, height } = block.map;
  if (!block.existing) {
    if (dressing.after !== null) {
      throw new InputError('no-stops', 'after', 'a drawing has no color stops', 'leave it away');
    }
    return { before: null, after: null, stops, origin: [-width / 2, -height / 2], name: block.name };
  }
  const after = dressing.after ?? Math.max(...block.stops);
  const opened = splitAfter(block.existing, after, '--after');
  return { before: opened.before, after: opened.after, stops, origin: block.origin, name: block.name };
}
