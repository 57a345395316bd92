import type { SeamMap } from '../block/seam-map.js';
import type { Finding } from '../finding.js';
import type { LineAsk } from '../fit/ask.js';
import type { Layer, SeamFit } from '../fit/fit.js';
import { bothManners, isEverShort } from '../fit/manner.js';
import { rowsOf, wholeReach } from '../fit/rows.js';
import type { KeptArea } from '../formats/line-drawing.js';
import type { Runs } from '../needle/run.js';
import { bareEnds, explainedEnds, insetOf, type SewnSeam } from './bare-ends.js';
import { bareSeam } from './bare-seam.js';

/** What a line was asked, and what came of it. */
export interface WorkedLine {
  readonly ask: LineAsk;
  readonly fit: SeamFit;
  /** as sewn, one for each layer of the fit */
  readonly layers: readonly { readonly kind: Layer['kind']; readonly runs: Runs }[];
}

/**
 * Where dressed lines stay bare, at their ends and between them.
 * @param said what has been found already: it may say why an end is bare
 */
export function bareLines(
  map: SeamMap,
  lines: readonly WorkedLine[],
  keepClear: readonly KeptArea[],
  said: readonly Finding[],
): Finding[] {
  const dressed = lines.flatMap((line) => {
    const { ask, fit } = line;
    if (fit.scale === null) return [];
    // flowers beside a seam do not cover it
    const rows = { ...rowsOf(ask, false), accents: [] };
    const { left, right } = wholeReach(rows, fit.scale, ask.sized.repeat * fit.scale);
    return [{ line, reach: Math.max(left, right), short: isEverShort(ask.manner) }];
  });
  const explained = explainedEnds(said);
  const sewn = dressed.flatMap(({ line: { ask, fit, layers }, reach }): SewnSeam[] => {
    const { seam, sized } = ask;
    if (seam === 'outline') return [];
    const own = layers.flatMap(({ kind, runs }) => (kind === 'row' ? [runs] : []));
    const [{ repeats, along }] = fit.rows;
    const inset = insetOf(sized.build(fit.scale ?? 1, repeats ? along / repeats : sized.repeat));
    const isSaid = explained.has(seam);
    const [start, end] = bothManners(ask.manner).map((manner) => isSaid || manner === 'short');
    return [{ seam, reach, repeats, inset, own, explained: [start, end] }];
  });
  const runsOf = new Map(lines.map(({ fit, layers }) => [fit.seam, layers.map(({ runs }) => runs)]));
  const { findings, between } = bareEnds(map, sewn, (seam) => runsOf.get(seam) ?? [], keepClear);
  const within = dressed.map(({ line: { ask, layers }, reach, short }) => ({
    seam: ask.seam,
    reach,
    short,
    own: layers.map(({ runs }) => runs),
    between: ask.seam === 'outline' ? undefined : between.get(ask.seam),
  }));
  return [...findings, ...bareSeam(map, within, [...runsOf.values()].flat(), keepClear)];
}
