import Flatbush from 'flatbush';
import type { LegKind } from '../stitches/stitch.js';
import { withoutLegs } from './cut.js';
import type { Chain } from './fit.js';
import type { LineFit } from './fit-lines.js';

/** Raised figures keep this far from the thread that will lie over a tucked end, mm: 1 mm clear and a thread's width. */
const CLEAR = 1.4;
/** What makes a lump under a covering thread. */
const RAISED: ReadonlySet<LegKind> = new Set<LegKind>(['loop', 'knot', 'petal', 'cord']);

/**
 * Where a treatment tucks under another, its knots, cords, loops and petals that would lie within a millimeter of the
 * other's thread are left out. Linear in the legs, apart from an index over those of the lines that lie on top.
 */
export function leaveOutUnderThrough(fits: readonly LineFit[]): LineFit[] {
  const byLine = new Map(fits.map((line) => [line.fit.seam, line]));
  const indices = new Map<number | 'outline', ThreadIndex>();
  const indexOf = (seam: number | 'outline') => {
    const known = indices.get(seam);
    if (known) return known;
    const made = threadIndex(byLine.get(seam)!.fit.chains);
    indices.set(seam, made);
    return made;
  };
  return fits.map((line) => {
    const raised = line.fit.chains.some((chain) => chain.kind.some((kind) => RAISED.has(kind)));
    if (!raised || line.tucksUnder.length === 0) return line;
    const over = line.tucksUnder.map(indexOf);
    const chains = line.fit.chains
      .map((chain) => withoutRaised(chain, over))
      .filter((chain) => chain.from.length > 0);
    return { ...line, fit: { ...line.fit, chains } };
  });
}

function withoutRaised(chain: Chain, over: readonly ThreadIndex[]): Chain {
  const dropped = new Set<string>();
  const key = (leg: number) => `${chain.unit[leg]}/${chain.legClass[leg]}`;
  for (let leg = 0; leg < chain.from.length; leg++) {
    if (!RAISED.has(chain.kind[leg])) continue;
    const around = CLEAR + chain.size[leg] / 2;
    for (let p = chain.pathStart[leg]; p < chain.pathStart[leg + 1]; p++) {
      if (over.some((index) => index.near(chain.path[2 * p], chain.path[2 * p + 1], around))) {
        dropped.add(key(leg));
        break;
      }
    }
  }
  // Both halves of a loop share their class and unit, and go together.
  return dropped.size === 0
    ? chain
    : withoutLegs(chain, (leg) => RAISED.has(chain.kind[leg]) && dropped.has(key(leg)));
}

interface ThreadIndex {
  near(x: number, y: number, around: number): boolean;
}

function threadIndex(chains: readonly Chain[]): ThreadIndex {
  const segments: number[] = [];
  for (const chain of chains) {
    for (let leg = 0; leg < chain.from.length; leg++) {
      if (chain.kind[leg] === 'under') continue;
      for (let p = chain.pathStart[leg]; p + 1 < chain.pathStart[leg + 1]; p++) {
        segments.push(...chain.path.subarray(2 * p, 2 * p + 4));
      }
    }
  }
  if (segments.length === 0) return { near: () => false };
  const index = new Flatbush(segments.length / 4);
  for (let i = 0; i < segments.length; i += 4) {
    const [x0, y0, x1, y1] = segments.slice(i, i + 4);
    index.add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
  }
  index.finish();
  return {
    near(x, y, around) {
      return index.search(x - around, y - around, x + around, y + around).some((s) => {
        const [x0, y0, x1, y1] = segments.slice(4 * s, 4 * s + 4);
        const [dx, dy] = [x1 - x0, y1 - y0];
        const square = dx * dx + dy * dy;
        const t = square > 0 ? Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / square)) : 0;
        return Math.hypot(x0 + t * dx - x, y0 + t * dy - y) < around;
      });
    },
  };
}
