/** One way to fill a stretch between two corners. */
export interface Fill {
  /** half-repeats it holds */
  readonly h: number;
  /** its own cost */
  readonly own: number;
  /** what should be alike on both sides of a corner, as logarithms */
  readonly logs: readonly number[];
}

/** Two costs nearer than this are a tie. */
export const TIE = 1e-12;

/** What two fills on both sides of a corner cost: sum of ln^2 of their ratios. */
export function cornerCost({ logs }: Fill, { logs: others }: Fill): number {
  let sum = 0;
  for (let i = 0; i < logs.length; i++) sum += (logs[i] - others[i]) ** 2;
  return sum;
}

interface State<F extends Fill> {
  readonly fill: F;
  /** half-repeats so far, modulo what the ring asks for */
  readonly over: number;
  readonly cost: number;
  readonly total: number;
  readonly from: State<F> | null;
}

/**
 * One fill for each stretch, the sum of their own costs and those of the corners between them least; ties go to more
 * half-repeats. Exact, by dynamic programming over the fills and the half-repeats so far. On a ring the last stretch meets
 * the first, and all half-repeats together are a multiple of `ring`: solved once for each fill of the first. Null when
 * there is none.
 *
 * Cost: stretches times squared fills, on a ring times fills.
 */
export function bestChain<F extends Fill>(
  fills: readonly (readonly F[])[],
  ring: number | null,
): readonly F[] | null {
  const rest = fills.slice(1);
  if (ring === null) return fillsOf(cheapest(chained(fills[0], rest, 1)));
  let best: State<F> | null = null;
  for (const first of fills[0]) {
    const closed = chained([first], rest, ring)
      .filter(({ over }) => over === 0)
      .map((state) => ({
        ...state,
        cost: state.cost + (rest.length > 0 ? cornerCost(state.fill, first) : 0),
      }));
    best = cheapest(best ? [best, ...closed] : closed);
  }
  return fillsOf(best);
}

/** The best states at the last stretch, one for each of its fills and each remainder of the half-repeats. */
function chained<F extends Fill>(
  first: readonly F[],
  rest: readonly (readonly F[])[],
  modulus: number,
): State<F>[] {
  let states = first.map(
    (fill): State<F> => ({ fill, over: fill.h % modulus, cost: fill.own, total: fill.h, from: null }),
  );
  for (const fills of rest) {
    states = fills.flatMap((fill) => {
      const best = new Map<number, State<F>>();
      for (const from of states) {
        const over = (from.over + fill.h) % modulus;
        const cost = from.cost + fill.own + cornerCost(fill, from.fill);
        const state = { fill, over, cost, total: from.total + fill.h, from };
        const known = best.get(over);
        if (!known || isBetter(state, known)) best.set(over, state);
      }
      return [...best.values()];
    });
  }
  return states;
}

const cheapest = <F extends Fill>(states: readonly State<F>[]): State<F> | null =>
  states.reduce<State<F> | null>((best, state) => (!best || isBetter(state, best) ? state : best), null);

const isBetter = (a: State<Fill>, b: State<Fill>): boolean =>
  a.cost < b.cost - TIE || (a.cost < b.cost + TIE && a.total > b.total);

function fillsOf<F extends Fill>(last: State<F> | null): F[] | null {
  if (!last) return null;
  const fills: F[] = [];
  for (let state: State<F> | null = last; state; state = state.from) fills.unshift(state.fill);
  return fills;
}
