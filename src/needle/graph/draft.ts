import type { Shape } from './shape.js';

/** A shape while it is read. Lists are as long as the longest so far, and serve unit after unit. */
export interface Draft {
  nodes: number;
  first: boolean;
  last: boolean;
  legs: number;
  readonly from: number[];
  readonly to: number[];
  readonly asked: number[];
  readonly price: number[];
  readonly legClass: number[];
  /** how many nodes it shares with earlier units, and with later ones */
  closed: number;
  readonly left: number[];
  open: number;
  readonly right: number[];
  seams: number;
  readonly seam: number[];
  /** chain nodes shared with later units */
  readonly shared: number[];
}

export const blankDraft = (): Draft => ({
  nodes: 0,
  first: false,
  last: false,
  legs: 0,
  from: [],
  to: [],
  asked: [],
  price: [],
  legClass: [],
  closed: 0,
  left: [],
  open: 0,
  right: [],
  seams: 0,
  seam: [],
  shared: [],
});

export function shapeFrom(draft: Draft): Shape {
  const { nodes, first, last, legs } = draft;
  return {
    nodes,
    first,
    last,
    from: draft.from.slice(0, legs),
    to: draft.to.slice(0, legs),
    asked: draft.asked.slice(0, legs),
    price: draft.price.slice(0, legs),
    legClass: draft.legClass.slice(0, legs),
    left: draft.left.slice(0, draft.closed),
    right: draft.right.slice(0, draft.open),
    seam: draft.seam.slice(0, draft.seams),
  };
}

export function alike(a: Shape, b: Draft): boolean {
  return (
    a.nodes === b.nodes &&
    a.first === b.first &&
    a.last === b.last &&
    same(a.from, b.from, b.legs) &&
    same(a.to, b.to, b.legs) &&
    same(a.asked, b.asked, b.legs) &&
    same(a.legClass, b.legClass, b.legs) &&
    same(a.price, b.price, b.legs) &&
    same(a.left, b.left, b.closed) &&
    same(a.right, b.right, b.open) &&
    same(a.seam, b.seam, b.seams)
  );
}

function same(a: readonly number[], b: readonly number[], count: number): boolean {
  if (a.length !== count) return false;
  for (let i = 0; i < count; i++) if (a[i] !== b[i]) return false;
  return true;
}

const lists = ['left', 'right', 'seam', 'from', 'to', 'asked', 'price', 'legClass'] as const;

export function keyOf(shape: Shape): string {
  const rest = [shape.nodes, shape.first ? 1 : 0, shape.last ? 1 : 0];
  return [rest, ...lists.map((name) => shape[name])].map((list) => list.join(' ')).join('|');
}
