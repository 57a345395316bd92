import type { Finding } from '../finding.js';
import { areaOf } from './band.js';
import { bandFindings } from './band-findings.js';
import type { Claim } from './band-polygon.js';
import type { Layer, SeamFit } from './fit.js';
import type { SpanFit } from './fit-span.js';
import { accentCounts, rowCounts } from './line-counts.js';
import { type FittedSpan, partsOf } from './line-pieces.js';
import type { Line } from './lines.js';
import { type Part, plainLines } from './plain-line.js';
import { plainClaim, plainFinding, withPlain } from './plain-parts.js';
import { toSeam } from './walk.js';

/** A line as fitted. */
export interface LineFit {
  readonly fit: SeamFit;
  /** what it claimed before thread was laid, see claimedCloth */
  readonly claims: readonly Claim[];
  /** lines whose treatment lies over this one's ends and must be sewn later */
  readonly tucksUnder: readonly (number | 'outline')[];
  readonly findings: readonly Finding[];
}

/** What repeats do not fill, and the lines that a line lies under. */
export interface Rest {
  readonly plain: readonly Part[];
  readonly tucksUnder: readonly (number | 'outline')[];
}

/** What the pieces of a line come to. */
export function fitLine(line: Line, pieces: readonly FittedSpan[], { plain, tucksUnder }: Rest): LineFit {
  const { ask, walk } = line;
  const parts = partsOf(pieces);
  const claims = pieces.map(({ span, parts }): Claim => {
    const worked = parts.flatMap((part) => (part.laid ? part.stretches : []));
    return { guide: walk.guide, band: line.band, span, worked };
  });
  const stretches = parts.flatMap((part) => part.stretches);
  const along = stretches.map((stretch) => {
    const ends = walk.reverse ? ([stretch.ends[1], stretch.ends[0]] as const) : stretch.ends;
    const from = toSeam(walk, walk.reverse ? stretch.to : stretch.from);
    // On a ring a stretch may run past the seam's own start: its end then counts on beyond the length.
    const to = from + ((stretch.to - stretch.from) * walk.seamLength) / walk.guide.length;
    return { ...stretch, from, to, ends };
  });
  const isRing = pieces.length === 1 && pieces[0].span.ring;
  const gapAt = (which: 0 | 1) => {
    const sewn = parts.filter((part) => part.laid);
    const part = which === 0 ? sewn[0] : sewn[sewn.length - 1];
    return isRing || !part ? 0 : part.gaps[which];
  };
  const gaps = [gapAt(0), gapAt(1)] as const;
  const laid = parts.flatMap((part) => part.laid ?? []);
  const across = walk.reverse ? -ask.offset : ask.offset;
  return {
    fit: {
      seam: ask.seam,
      stitch: ask.sized.stitch.name,
      stretches: walk.reverse ? along.reverse() : along,
      layers: withPlain(layersOf(parts), plainLines(walk.guide, plain, across, ask.passes)),
      marks: laid.flatMap(({ marks }) => marks),
      guides: laid.flatMap(({ guides }) => guides),
      rows: rowCounts(laid),
      accents: accentCounts(laid),
      wanted: ask.sized.repeat,
      endGap: walk.reverse ? [gaps[1], gaps[0]] : gaps,
      bandMm2: stretches.reduce((sum, { from, to }) => sum + areaOf(line.band, from, to), 0),
      scale:
        laid.length > 0 ? Math.min(1, ...parts.filter((part) => part.laid).map((part) => part.scale)) : null,
    },
    claims: [...claims, ...plain.map((part) => plainClaim(walk, across, part))],
    tucksUnder,
    findings: [
      ...bandFindings(line),
      ...parts.flatMap((part) => part.findings),
      ...plainFinding(line, plain),
    ],
  };
}

/** A fitted line with a plain line along parts of it. */
export function withPlainParts(line: Line, fitted: LineFit, parts: readonly Part[]): LineFit {
  const { ask, walk } = line;
  const across = walk.reverse ? -ask.offset : ask.offset;
  const { fit, claims, findings } = fitted;
  return {
    ...fitted,
    fit: { ...fit, layers: withPlain(fit.layers, plainLines(walk.guide, parts, across, ask.passes)) },
    claims: [...claims, ...parts.map((part) => plainClaim(walk, across, part))],
    findings: [...findings, ...plainFinding(line, parts)],
  };
}

/** A line of whose rows nothing is left has no repeats either. */
export function withoutEmpty(line: LineFit): LineFit {
  const layers = line.fit.layers.map((layer) => ({
    ...layer,
    chains: layer.chains.filter((chain) => chain.from.length > 0),
  }));
  const isWorked = layers.some(({ kind, chains }) => kind === 'row' && chains.length > 0);
  const { stretches, guides, rows, scale } = line.fit;
  const counts = isWorked
    ? { stretches, guides, rows, scale }
    : { stretches: [], guides: [], rows: [], scale: null };
  return { ...line, fit: { ...line.fit, layers, ...counts } };
}

/** The layers of all parts of a line, one for each thread: all parts have the same ones. */
function layersOf(parts: readonly SpanFit[]): Layer[] {
  const laid = parts.flatMap((part) => part.laid?.layers ?? []);
  const byThread = new Map<string, Layer>();
  for (const layer of laid) {
    const key = `${layer.kind}/${layer.index}/${layer.thread}`;
    const known = byThread.get(key);
    byThread.set(key, known ? { ...known, chains: [...known.chains, ...layer.chains] } : layer);
  }
  return [...byThread.values()];
}
