import type { SeamMap } from '../block/seam-map.js';
import { type Finding, lineName } from '../finding.js';
import { frameFinder } from '../geometry/guide-frame.js';
import type { LineIndex } from '../geometry/line-index.js';
import type { Progress } from '../progress.js';
import type { FitRules, LineAsk } from './ask.js';
import { areaOf } from './band.js';
import { type Claim, claimedCloth } from './band-polygon.js';
import { type Bound, type Cut, cutter } from './cloth.js';
import type { Chain, Layer, SeamFit } from './fit.js';
import { fitInPieces, type PieceFit } from './fit-pieces.js';
import type { SpanFit } from './fit-span.js';
import { isLeftOutUnder, leaveOutUnderThrough, threadSeen } from './leave-out.js';
import { accentCounts, rowCounts } from './line-counts.js';
import { keepsShape, type Line, type Lines, mannerOf, waysOf } from './lines.js';
import { isEverShort } from './manner.js';
import { either, Memory, withLinked } from './memory.js';
import { linesAt, meetingLines, narrowedLines } from './narrowing.js';
import { onClaim } from './on-claim.js';
import { bareAtJunctions } from './plain-at-junctions.js';
import { type Part, plainLines } from './plain-line.js';
import { isWhole, plainClaim, plainFinding, plainParts, withPlain } from './plain-parts.js';
import { isSame } from './same.js';
import type { Span } from './spans.js';
import { spansApart } from './spans-apart.js';
import { toSeam, type Walk } from './walk.js';

/** A line as fitted. */
export interface LineFit {
  readonly fit: SeamFit;
  /** what it claimed before thread was laid, see claimedCloth */
  readonly claims: readonly Claim[];
  /** lines whose treatment lies over this one's ends and must be sewn later */
  readonly tucksUnder: readonly (number | 'outline')[];
  readonly findings: readonly Finding[];
}

/**
 * Fits every line that is asked for: bands first, then ends at junctions, then repeats. One ask a line, in any order;
 * answers come in the order of the asks. Cost: linear in the lines and their repeats; with a memory, what has changed
 * and what depends on it.
 *
 * @param memory of an earlier fit: where map, rules and seams are the same, asks that are the same objects are not worked
 *   out again. The answer is the same as without
 * @param progress told line by line
 */
export function fitLines(
  map: SeamMap,
  asks: readonly LineAsk[],
  rules: FitRules,
  memory: Memory = new Memory(),
  progress: Progress = () => {},
): LineFit[] {
  progress(0, asks.length, 'fitting seams');
  const count = asks.length;
  const seams = asks.map(({ seam }) => seam);
  memory.begin([map, rules.gap, rules.outline, ...seams]);
  const changed = memory.each('ask', count, 'all', (l) => asks[l]).changed;
  const meet = memory.once('meeting', () => meetingLines(map, seams));
  const cut = memory.once('cutter', () => cutter(map));
  const ways = waysOf(map, asks, rules.gap, changed, memory);
  const lines = narrowedLines(map, ways, meet, rules, memory);
  const spans = spansApart(map, lines, meet, rules, cut, memory);
  const first = memory.each('pieces', count, either(lines.changed, spans.changed), (l) => {
    progress(l, count, 'fitting seams');
    return piecesOf(map, lines.of[l], spans.of[l], rules, cut, []);
  });
  const all = linesAt(meet.places, lines.of);
  const cover = memory.each('cover', count, first.changed, (l) => {
    let made: LineIndex | null = null;
    return (): LineIndex => {
      made ??= threadSeen(chainsIn(first.of[l]));
      return made;
    };
  });
  // figures that keep their shape may be drawn smaller beside the thread that will lie over them
  const besideCover = (l: number, last: readonly FittedSpan[] | undefined): readonly FittedSpan[] => {
    const line = lines.of[l];
    const over = keepsShape(line) ? throughLines(map, all, line, spans.of[l]) : [];
    const threads = over.map((seam) => cover.of[meet.places.get(seam)!]());
    const isClear = !chainsIn(first.of[l]).some((chain) => isLeftOutUnder(chain, threads));
    if (isClear) return first.of[l];
    const found = piecesOf(map, line, spans.of[l], rules, cut, threads);
    return last && isSame(found, last) ? last : found;
  };
  const pieces = memory.each('beside cover', count, withLinked(first.changed, meet.met), besideCover);
  // what is left for a plain line depends on all that it meets, and over whom it is sewn on whether they are dressed
  const rest = memory.each(
    'rest',
    count,
    either(pieces.changed, withLinked(lines.changed, meet.met)),
    (l, last: Rest | undefined): Rest => {
      const line = lines.of[l];
      const parts = partsOf(pieces.of[l]);
      const plain = isWhole(line, parts) ? [] : plainParts(map, all, line, rules, parts);
      const tucksUnder = throughLines(map, all, line, spans.of[l]);
      const found = { plain, tucksUnder };
      return last && isSame(found, last) ? last : found;
    },
  );
  const fits = memory.each('fit', count, either(pieces.changed, rest.changed), (l) => {
    return fitLine(lines.of[l], pieces.of[l], rest.of[l]);
  });
  const left = leaveOutUnderThrough(fits, map.junctions, meet, memory);
  const ends = memory.each(
    'ends',
    count,
    withLinked(either(left.changed, lines.changed, spans.changed), meet.met),
    (l, last: LineFit | undefined): LineFit => {
      const met = () =>
        meet.met[l].flatMap((other) => left.of[other].fit.layers.flatMap((one) => one.chains));
      const sewn = { line: lines.of[l], spans: spans.of[l], fit: left.of[l].fit, whole: fits.of[l].fit };
      const bare = bareAtJunctions(map, all, sewn, rules, met);
      const found = bare.length === 0 ? left.of[l] : withPlainParts(lines.of[l], left.of[l], bare);
      return last && bare.length > 0 && isSame(found, last) ? last : found;
    },
  );
  return memory.each('worked', count, ends.changed, (l) => withoutEmpty(ends.of[l])).of.slice();
}

/** A fitted line with a plain line along parts of it. */
function withPlainParts(line: Line, fitted: LineFit, parts: readonly Part[]): LineFit {
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

/** What repeats do not fill, and the lines that a line lies under. */
interface Rest {
  readonly plain: readonly Part[];
  readonly tucksUnder: readonly (number | 'outline')[];
}

/** A line of whose rows nothing is left has no repeats either. */
function withoutEmpty(line: LineFit): LineFit {
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

/** A span and what it got, in one piece or several. */
interface FittedSpan {
  readonly span: Span;
  readonly parts: readonly PieceFit[];
}

const partsOf = (pieces: readonly FittedSpan[]): PieceFit[] => pieces.flatMap(({ parts }) => parts);

const chainsIn = (pieces: readonly FittedSpan[]): Chain[] =>
  partsOf(pieces).flatMap(({ laid }) => laid?.layers.flatMap((layer) => layer.chains) ?? []);

function piecesOf(
  { junctions }: SeamMap,
  { ask, walk, band, rows, scale }: Line,
  spans: readonly Span[],
  { gap }: FitRules,
  cut: (bound: Bound) => Cut,
  cover: readonly LineIndex[],
): FittedSpan[] {
  const { guide } = walk;
  const within = isEverShort(ask.manner)
    ? onClaim(spans.flatMap((span) => claimedCloth({ guide, band, span, worked: null }, cut)))
    : null;
  const offset = walk.reverse ? -ask.offset : ask.offset;
  const middle = (piece: Span) => middleOf(walk, piece);
  const shared = { seam: ask.seam, guide, band, rows, scale, offset, cut, within, cover, middle };
  return spans.map((span) => {
    const bulk = [span.start, span.end].flatMap(({ junction }) =>
      junction < 0 || junctions[junction].onOutline ? [] : junctions[junction].at,
    );
    return { span, parts: fitInPieces({ ...shared, span, bulk }, gap) };
  });
}

function fitLine(line: Line, pieces: readonly FittedSpan[], { plain, tucksUnder }: Rest): LineFit {
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

function throughLines(
  map: SeamMap,
  lines: Lines,
  line: Line,
  spans: readonly Span[],
): (number | 'outline')[] {
  const under = new Set<number | 'outline'>();
  for (const { junction, at } of spans.flatMap((span) => [span.start, span.end])) {
    if (junction < 0 || mannerOf(line, at) !== 'tuck') continue;
    const joint = map.junctions[junction];
    const through = joint.onOutline ? 'outline' : joint.through;
    if (through === null || through === line.ask.seam || line.ask.shortOf.has(through)) continue;
    if (lines.has(through)) under.add(through);
  }
  return [...under];
}

function bandFindings(line: Line): Finding[] {
  const { ask, walk, scale, tight } = line;
  const seam = ask.seam;
  const title = ask.sized.stitch.title.toLowerCase();
  const findings: Finding[] = [];
  if (scale < 1 - 1e-9) {
    findings.push({
      level: 'note',
      code: 'made-smaller',
      message:
        `${lineName(seam)}: ${title} is made ${Math.round(scale * 100)} % of its size, because the seam bends tightly, ` +
        `runs close beside another${line.kept ? ' or what is kept clear' : ''} or meets it at a sharp angle; a narrower ` +
        'stitch here gives it more room',
      seam,
      at: middleOf(walk, null),
    });
  }
  for (const beside of [false, true]) {
    const parts = tight.filter((part) => part.kept === null && part.beside === beside);
    if (parts.length === 0) continue;
    const bare = parts.reduce((sum, { from, to }) => sum + to - from, 0);
    findings.push({
      level: 'warning',
      code: beside ? 'close-beside' : 'tight-bend',
      message:
        `${lineName(seam)}: ${title} is not worked on ${bare.toFixed(1)} mm where ` +
        (beside
          ? 'another treatment runs too close beside it; narrower stitches on both, or one of them left bare, would do'
          : 'the seam bends too tightly for its smallest good size; a narrower stitch would go round'),
      seam,
      at: placeAt(walk, (parts[0].from + parts[0].to) / 2),
    });
  }
  for (const name of new Set(tight.flatMap(({ kept }) => kept ?? []))) {
    const parts = tight.filter(({ kept }) => kept === name);
    const bare = parts.reduce((sum, { from, to }) => sum + to - from, 0);
    findings.push({
      level: 'note',
      code: 'kept-clear',
      message: `${lineName(seam)}: ${title} leaves ${bare.toFixed(1)} mm bare to keep ${name} clear`,
      seam,
      at: placeAt(walk, (parts[0].from + parts[0].to) / 2),
    });
  }
  return findings;
}

function middleOf(walk: Walk, span: Span | null): [number, number] {
  return placeAt(walk, span ? (span.start.at + span.end.at) / 2 : walk.guide.length / 2);
}

function placeAt(walk: Walk, u: number): [number, number] {
  const finder = frameFinder(walk.guide, 0, walk.guide.u.length - 1);
  finder.at(u);
  return [finder.frame[0], finder.frame[1]];
}
