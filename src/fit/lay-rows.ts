import type { Points } from '../geometry/polyline.js';
import type { Stitch } from '../stitches/stitch.js';
import { seatedAccents } from './accents.js';
import { byHand } from './by-hand.js';
import { type Cut, type IsOnCloth, onCloth } from './cloth.js';
import { cutChain } from './cut.js';
import type { AccentCount, Chain, Facing, Layer, Mark, RowCount } from './fit.js';
import { followerRow } from './followers.js';
import { type Laying, layer } from './lay.js';
import { ofOneThread, ofOneUnit, threadsByClass } from './one-thread.js';
import { placeUnits } from './place.js';
import { lineChain, PLAIN_STITCH } from './plain-line.js';
import { rowLines } from './row-lines.js';
import type { Rows } from './rows.js';
import type { Placing, UnitRun } from './unit-places.js';

/** Cloth that a span has to stay on at its ends: the thread of its rows, and its accents, which stay whole. */
export interface Cuts {
  readonly thread: readonly Cut[];
  readonly figures: readonly Cut[];
  /** the cloth that the treatment claims, where it must not leave that */
  readonly within: IsOnCloth | null;
}

/** One span laid on the cloth: layers in the order they are sewn, and what is put on by hand. */
export interface Laid {
  readonly layers: readonly Layer[];
  readonly marks: readonly Mark[];
  /** lines that rows are worked on, see rowLines */
  readonly guides: readonly Points[];
  readonly rows: readonly RowCount[];
  readonly accents: readonly AccentCount[];
}

/**
 * Lays all rows of a span over the runs that the first one got, with their accents; rows on the mirrored one of two
 * interlaced lines along that.
 */
export function layRows(
  rows: Rows,
  laying: Laying,
  runs: readonly UnitRun[],
  scale: number,
  ring: boolean,
  cuts: Cuts,
  mirrored: Laying = laying,
): Laid {
  const onWhole = onCloth(cuts.figures);
  const { sized, hand, passes, uneven } = rows;
  const isCut = cuts.thread.length > 0 || cuts.within !== null;
  const cloth = isCut ? { allowed: onCloth(cuts.thread, cuts.within), broadly: cuts.within } : undefined;
  const first: Placing = {
    laying,
    runs,
    closed: ring,
    hand,
    alternate: sized.glide,
    passes,
    beside: 0,
    uneven,
    cloth,
  };
  const placings: (readonly Placing[])[] = [
    [first],
    ...rows.followers.map((follower) => {
      const { chains, closed } = followerRow(runs, sized.glide, ring, follower, scale);
      return chains.map(
        (own): Placing => ({
          laying: follower.mirrored ? mirrored : laying,
          runs: own,
          closed,
          hand: follower.hand,
          alternate: follower.sized.glide,
          passes: follower.passes,
          beside: follower.beside,
          uneven,
          cloth,
        }),
      );
    }),
  ];
  const rowLayers = placings.flatMap((own, index) => {
    const { stitch } = index === 0 ? sized : rows.followers[index - 1].sized;
    return stitch.threads.map(
      (_, thread): Layer => ({
        kind: 'row',
        index,
        thread,
        chains: own.flatMap((placing) => rowChains(placing, thread, stitch)),
      }),
    );
  });
  const accents = rows.accents.map((accent) => {
    const own = placings[accent.row].map((placing) =>
      seatedAccents(accent, placing, scale, onWhole, cuts.within),
    );
    return {
      seated: own.flatMap(({ seated }) => seated),
      asked: own.reduce((sum, { asked }) => sum + asked, 0),
      leftOut: own.flatMap(({ leftOut }) => leftOut),
    };
  });
  const accentLayers = rows.accents.flatMap(({ threads, byHand }, index) =>
    (byHand === null ? threads : []).map(
      (_, thread): Layer => ({
        kind: 'accent',
        index,
        thread,
        chains: accents[index].seated.map(({ chain, unit }) =>
          ofOneThread(chain, threadsByClass(unit), thread),
        ),
      }),
    ),
  );
  const marks = rows.accents.flatMap(({ byHand }, index) =>
    byHand === null
      ? []
      : accents[index].seated.map(({ at, radius }): Mark => ({ what: byHand, at, radius, index })),
  );
  const placement: Layer[] =
    rows.laid > 0
      ? [{ kind: 'placement', index: 0, thread: 0, chains: [placementLine(laying, runs, ring)] }]
      : [];
  return {
    layers: [...placement, ...rowLayers, ...accentLayers],
    marks,
    guides: rowLines(placings.flat()),
    rows: placings.map(rowCount),
    accents: accents.map(({ asked, leftOut }) => ({ asked, leftOut })),
  };
}

function rowCount(own: readonly Placing[]): RowCount {
  let [repeats, along] = [0, 0];
  for (const { runs, alternate } of own) {
    for (const { count, length } of runs) {
      repeats += count / (alternate ? 2 : 1);
      along += count * length;
    }
  }
  return { repeats, along };
}

/** The chains of one thread of a row, cut to the cloth. */
function rowChains(placing: Placing, thread: number, { threads, detached }: Stitch): Chain[] {
  const even = { ...placeUnits(placing), facing: facingOf(placing) };
  const { cloth } = placing;
  const whole = placing.uneven ? byHand(even, placing.uneven) : even;
  const unit = placing.runs[0].unit;
  const own = threads.length === 1 ? whole : ofOneThread(whole, threadsByClass(unit), thread);
  const chains = detached ? ofOneUnit(own) : [own];
  return cloth ? chains.map((chain) => cutChain(chain, cloth.allowed, cloth.broadly)) : chains;
}

function facingOf({ laying, runs, hand }: Placing): Facing {
  const lay = layer(laying);
  lay.at(runs[0].from, 0);
  return { theta: lay.out[2], hand };
}

/** A running line along the seam, where a ribbon will lie. */
function placementLine(laying: Laying, runs: readonly UnitRun[], ring: boolean): Chain {
  const lay = layer(laying);
  const nodes: number[] = [];
  for (const { from, count, length } of runs) {
    const pieces = Math.max(1, Math.round((count * length) / PLAIN_STITCH));
    for (let i = nodes.length ? 1 : 0; i <= pieces; i++) {
      lay.at(from + (count * length * i) / pieces, 0);
      nodes.push(lay.out[0], lay.out[1]);
    }
  }
  if (ring) nodes.length -= 2;
  return lineChain(nodes, ring, 1);
}
