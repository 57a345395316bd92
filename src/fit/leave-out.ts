import type { Junction } from '../block/seam-map.js';
import { boxOf } from '../geometry/box.js';
import { int32s, uint8s } from '../geometry/flat.js';
import { rising } from '../geometry/groups.js';
import { type LineIndex, lineIndex } from '../geometry/line-index.js';
import type { Points } from '../geometry/polyline.js';
import type { LegKind } from '../stitches/stitch.js';
import { OFF_COVER } from './ends.js';
import type { Chain, Layer, LeftOut } from './fit.js';
import { withoutLegs } from './kept-legs.js';
import type { LineFit } from './line-fit.js';
import { type Answers, either, type Memory } from './memory.js';
import type { Meeting } from './narrowing.js';
import { isSame } from './same.js';
import { threadSeen } from './thread-seen.js';

/** What makes a lump under a covering thread. */
const RAISED: ReadonlySet<LegKind> = new Set<LegKind>(['loop', 'knot', 'petal', 'cord']);

/** Seam allowances lie over each other for so far about a junction, mm: with bulk on top a needle may break. Common practice. */
export const OFF_JUNCTION = 2;
/** What is sewn thick. */
export const BULKY: ReadonlySet<LegKind> = new Set<LegKind>(['knot', 'petal', 'cord']);

/** A line under which another tucks, and where its thread lies. */
interface Over {
  readonly seam: number | 'outline';
  readonly thread: LineIndex;
}

/**
 * Where a treatment tucks under another, its knots, cords, loops and petals that would lie within a millimeter of the
 * other's thread are left out; accents, which are sewn last, are left out whole, in all their threads; and anywhere the
 * single petal that is left of a sprig. Knots, cords and satin petals keep off the bulk of junctions, whatever runs through them.
 * Linear in the legs, apart from an index over those of the lines that lie on top and over the junctions.
 */
export function leaveOutUnderThrough(
  fits: Answers<LineFit>,
  junctions: readonly Junction[],
  { places, met }: Meeting,
  memory: Memory,
): Answers<LineFit> {
  const count = fits.of.length;
  const bulk = memory.once('bulk', () => lineIndex([pointLines(junctions)]));
  const threads = memory.each('thread', count, fits.changed, (l) => seenOf(chainsOf(fits.of[l])));
  const raised = memory.each('raised', count, fits.changed, (l) => mayBeLeftOut(fits.of[l]));
  // a line tucks under those that it meets
  const over = fits.changed.flatMap((l) =>
    met[l].filter((other) => fits.of[other].tucksUnder.includes(fits.of[l].fit.seam)),
  );
  return memory.each('left out', count, either(fits.changed, over), (l, last: LineFit | undefined) => {
    const line = fits.of[l];
    if (!raised.of[l]) return line;
    const over = line.tucksUnder.map((seam): Over => ({ seam, thread: threads.of[places.get(seam)!]() }));
    const left = leftOut(line, over, bulk);
    return last && isSame(left, last) ? last : left;
  });
}

const mayBeLeftOut = ({ fit }: LineFit): boolean =>
  fit.layers.some(
    ({ kind, chains }) =>
      kind === 'accent' || chains.some((chain) => chain.kind.some((one) => RAISED.has(one))),
  );

/** Where seams meet; on the outline they meet nothing thick. A line so short is a point. */
function pointLines(junctions: readonly Junction[]): { xy: Float64Array; start: Int32Array } {
  const inside = junctions.filter(({ onOutline }) => !onOutline);
  return {
    xy: Float64Array.from(inside.flatMap(({ at: [x, y] }) => [x, y, x + POINT, y])),
    start: rising(inside.length + 1).map((i) => 2 * i),
  };
}

const POINT = 1e-6;

function leftOut(line: LineFit, over: readonly Over[], bulk: LineIndex): LineFit {
  const { layers, accents } = line.fit;
  const onThread = accents.map((_, index) => figuresOff(layers, index, over, bulk));
  return {
    ...line,
    fit: {
      ...line.fit,
      layers: layers.map((layer): Layer => {
        const chains =
          layer.kind === 'accent'
            ? layer.chains.filter((_, figure) => !onThread[layer.index].has(figure))
            : layer.chains.map((chain) => withoutRaised(chain, over, bulk));
        return { ...layer, chains: chains.filter((chain) => chain.from.length > 0) };
      }),
      accents: accents.map(({ asked, leftOut }, index) => ({
        asked,
        leftOut: [...leftOut, ...onThread[index].values()],
      })),
    },
  };
}

const chainsOf = ({ fit }: LineFit): Chain[] => fit.layers.flatMap(({ chains }) => chains);

/** Which figures of an accent come near the thread of another line or a junction, in whichever of their own threads, from 0. */
function figuresOff(
  layers: readonly Layer[],
  accent: number,
  over: readonly Over[],
  bulk: LineIndex,
): ReadonlyMap<number, LeftOut> {
  const threads = layers.filter(({ kind, index }) => kind === 'accent' && index === accent);
  const found = new Map<number, LeftOut>();
  for (let figure = 0; figure < (threads[0]?.chains.length ?? 0); figure++) {
    const own = threads.map(({ chains }) => chains[figure]);
    const other = over.find((one) => own.some((chain) => isFigureNear(chain, one)));
    const isOnBulk =
      !other && own.some((chain) => chain.kind.some((_, leg) => isOnJunction(chain, leg, bulk)));
    if (!other && !isOnBulk) continue;
    const { middle } = roundBox(own.map(({ path }) => path));
    found.set(
      figure,
      other ? { at: middle, why: 'on-thread', other: other.seam } : { at: middle, why: 'on-junction' },
    );
  }
  return found;
}

const isFigureNear = (chain: Chain, over: Over): boolean =>
  chain.kind.some((kind, leg) => kind !== 'under' && comesNear(chain, leg, [over]));

/**
 * Without the raised figures near other thread, and without what is then left of a cluster, or was left where it was
 * cut, when that is a single one: a lone petal looks like a mistake.
 */
function withoutRaised(chain: Chain, over: readonly Over[], bulk: LineIndex): Chain {
  const { kind, unit, legClass } = chain;
  const isNearAny = (leg: number) => comesNear(chain, leg, over) || isOnJunction(chain, leg, bulk);
  // each knot stands for itself
  const isFigure = (leg: number) => RAISED.has(kind[leg]) && kind[leg] !== 'knot';
  let [units, classes] = [0, 0];
  for (let leg = 0; leg < kind.length; leg++) {
    units = Math.max(units, unit[leg] + 1);
    classes = Math.max(classes, legClass[leg] + 1);
  }
  /** by unit and class; both halves of a loop share theirs, and go together */
  const figures = uint8s(units * classes);
  for (let leg = 0; leg < kind.length; leg++) {
    if (!isFigure(leg)) continue;
    const figure = unit[leg] * classes + legClass[leg];
    if (figures[figure] !== NEAR) figures[figure] = isNearAny(leg) ? NEAR : APART;
  }
  /** figures of each unit, and how many of them stay */
  const own = int32s(units);
  const apart = int32s(units);
  for (let figure = 0; figure < figures.length; figure++) {
    const at = Math.floor(figure / classes);
    if (figures[figure] !== 0) own[at]++;
    if (figures[figure] === APART) apart[at]++;
  }
  let whole = 0;
  for (const count of own) whole = Math.max(whole, count);
  return withoutLegs(chain, (leg) => {
    if (kind[leg] === 'knot') return isNearAny(leg);
    const isLone = apart[unit[leg]] === 1 && whole > 1;
    return isFigure(leg) && (isLone || figures[unit[leg] * classes + legClass[leg]] === NEAR);
  });
}

/** What is known of a figure: whether it comes near to other thread or lies on a junction. */
const APART = 1;
const NEAR = 2;

const comesNear = (chain: Chain, leg: number, over: readonly Over[]): boolean =>
  over.some(({ thread }) => isWithin(chain, leg, thread, OFF_COVER + chain.size[leg] / 2));

/** Thread, to be asked how far it is away: made ready when it is asked for the first time. */
type Seen = () => LineIndex;

function seenOf(chains: readonly Chain[]): Seen {
  let made: LineIndex | null = null;
  return () => {
    made ??= threadSeen(chains);
    return made;
  };
}

const isOnJunction = (chain: Chain, leg: number, bulk: LineIndex): boolean =>
  BULKY.has(chain.kind[leg]) && isWithin(chain, leg, bulk, OFF_JUNCTION + chain.size[leg] / 2);

/** Whether any point of a leg comes so near to lines. */
function isWithin({ path, pathStart }: Chain, leg: number, lines: LineIndex, around: number): boolean {
  const first = 2 * pathStart[leg];
  const end = 2 * pathStart[leg + 1];
  const x = path[first];
  const y = path[first + 1];
  let square = 0;
  for (let i = first + 2; i < end; i += 2) {
    const own = (path[i] - x) * (path[i] - x) + (path[i + 1] - y) * (path[i + 1] - y);
    if (own > square) square = own;
  }
  // most are far from any, which one look from the start tells
  const far = around + Math.sqrt(square);
  const { left, top, right, bottom } = lines.box;
  if (x < left - far || x > right + far || y < top - far || y > bottom + far) return false;
  if (lines.distance(x, y, far) === Infinity) return false;
  for (let i = first; i < end; i += 2) {
    if (lines.distance(path[i], path[i + 1], around) <= around) return true;
  }
  return false;
}

/** The circle round the box of some lines. */
function roundBox(lines: readonly Points[]): { middle: [number, number]; radius: number } {
  const { left, top, right, bottom } = boxOf(lines);
  return {
    middle: [(left + right) / 2, (top + bottom) / 2],
    radius: Math.hypot(right - left, bottom - top) / 2,
  };
}
