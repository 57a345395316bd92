import type { UnitLeg } from '../stitches/stitch.js';

/**
 * Legs that hang together, whose loops are whole and held: without what a hand could not leave so. Where thread turns
 * back in a hole, the straight stitch that comes up there holds it; in a stitch whose last loop wants holding at the end
 * of a row, so does whatever goes on from there.
 */
export function heldParts(within: readonly UnitLeg[], all: readonly UnitLeg[], held: boolean): UnitLeg[][] {
  let legs = within;
  for (;;) {
    const own = new Set(legs);
    const isLoose = (leg: UnitLeg): boolean =>
      leg.kind === 'loop' &&
      all.some((half) => half.name === leg.name && !own.has(half) && isBeside(half, leg));
    const turns = legs
      .flatMap(({ from, to }) => [from, to])
      .filter((node) => isUnheld(node, legs, all, held));
    const kept = legs.filter(
      (leg) => !isLoose(leg) && !(isBent(leg) && turns.some((node) => node === leg.from || node === leg.to)),
    );
    if (kept.length === legs.length) return connected(kept);
    legs = kept;
  }
}

const isBeside = (a: UnitLeg, b: UnitLeg): boolean => a.from === b.to && a.to === b.from;

const isBent = ({ kind }: UnitLeg): boolean => kind === 'curve' || kind === 'loop';

function isUnheld(node: number, legs: readonly UnitLeg[], all: readonly UnitLeg[], held: boolean): boolean {
  const bent = legs.filter((leg) => isBent(leg) && (leg.from === node || leg.to === node));
  if (bent.length < 2) return false;
  const after = all.slice(Math.max(...bent.map((leg) => all.indexOf(leg))) + 1);
  const holding = after.filter((leg) => leg.from === node && (leg.kind === 'straight' || held));
  return holding.length > 0 && !holding.some((leg) => legs.includes(leg));
}

/** Legs that share a hole, cross, or are laid about one point. */
function connected(legs: readonly UnitLeg[]): UnitLeg[][] {
  const groups: UnitLeg[][] = [];
  for (const leg of legs) {
    const beside = groups.filter((group) => group.some((other) => hangTogether(leg, other)));
    for (const group of beside) groups.splice(groups.indexOf(group), 1);
    const own = new Set([...beside.flat(), leg]);
    groups.push(legs.filter((one) => own.has(one)));
  }
  return groups;
}

const hangTogether = (a: UnitLeg, b: UnitLeg): boolean =>
  a.from === b.from ||
  a.from === b.to ||
  a.to === b.from ||
  a.to === b.to ||
  (!a.bends && !b.bends && a.anchor === b.anchor) ||
  (a.kind === 'straight' && b.kind === 'straight' && cross(a.path, b.path));

function cross(a: Float64Array, b: Float64Array): boolean {
  const side = (p: Float64Array, u: number, v: number) => {
    const n = p.length;
    return (p[n - 2] - p[0]) * (v - p[1]) - (p[n - 1] - p[1]) * (u - p[0]);
  };
  const parts = (p: Float64Array, q: Float64Array) =>
    side(p, q[0], q[1]) * side(p, q[q.length - 2], q[q.length - 1]) < 0;
  return parts(a, b) && parts(b, a);
}
