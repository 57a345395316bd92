import type { UnitLeg } from '../stitches/stitch.js';
import type { LineAsk } from './ask.js';
import type { Spread } from './keep-clear.js';
import type { KeptPart } from './kept-band.js';
import { type Rows, unitsOf, wholeOverhang } from './rows.js';
import { SHORTEST_SHARE } from './span-counts.js';
import type { TightPart } from './spans.js';
import type { Walk } from './walk.js';

interface Way {
  readonly ask: LineAsk;
  readonly walk: Walk;
  readonly rows: Rows;
}

/**
 * Parts of a line that stay bare, ascending, those that meet as one: where the treatment is pressed too much, and where it is
 * cut off beside what is kept clear, with what is left between two such parts or beside an end if no repeat fits there.
 */
export function withKept(tight: readonly TightPart[], cut: readonly KeptPart[], way: Way): TightPart[] {
  const areas = way.ask.keepClear ?? [];
  const kept = withoutStubs(cut, way).map(
    ({ from, to, area }): TightPart => ({ from, to, beside: false, kept: areas[area].name }),
  );
  const joined: TightPart[] = [];
  for (const part of [...tight, ...kept].sort((a, b) => a.from - b.from)) {
    const before = joined[joined.length - 1];
    if (!before || before.to < part.from) joined.push(part);
    else {
      const to = Math.max(before.to, part.to);
      joined[joined.length - 1] = { ...before, to, kept: bothNames(before.kept, part.kept) };
    }
  }
  return joined;
}

function bothNames(one: string | null, other: string | null): string | null {
  if (one === null || other === null || one === other) return one ?? other;
  return `${one} and ${other}`;
}

function withoutStubs(cut: readonly KeptPart[], { ask: { sized }, walk, rows }: Way): KeptPart[] {
  const repeat = sized.repeat * sized.least;
  const { start, end } = wholeOverhang(rows, sized.least, repeat);
  const room = SHORTEST_SHARE * repeat + start + end;
  const { length, closed } = walk.guide;
  return cut.map((part, i) => {
    const next = cut[i + 1]?.from ?? (closed ? Infinity : length);
    return {
      ...part,
      from: i === 0 && !closed && part.from < room ? 0 : part.from,
      to: next - part.to < room ? next : part.to,
    };
  });
}

/** How far along its line the thread of a treatment spreads from a place. */
export function spreadOf(rows: Rows): Spread {
  const { repeat } = rows.sized;
  const legs = unitsOf(rows, 1, repeat).flatMap((unit) =>
    unit.legs.filter(({ kind }) => kind !== 'under').map((leg) => spreadOfLeg(leg, unit.nodes)),
  );
  const figures = rows.accents.flatMap(({ figures: all, away }) =>
    all.map((figure) => {
      const { reach, overhang } = figure.build(1);
      return Math.max(reach.left, reach.right, overhang.start, overhang.end) + Math.abs(away);
    }),
  );
  return { legs: Math.max(0, ...legs), figures: Math.max(0, ...figures), repeat };
}

function spreadOfLeg({ path, bends, anchor }: UnitLeg, nodes: Float64Array): number {
  let [least, most] = [Infinity, -Infinity];
  for (let i = 0; i < path.length; i += 2) {
    least = Math.min(least, path[i]);
    most = Math.max(most, path[i]);
  }
  // Where a leg keeps its shape, all of it goes by the place of its anchor.
  return bends ? (most - least) / 2 : Math.max(most - nodes[2 * anchor], nodes[2 * anchor] - least);
}
