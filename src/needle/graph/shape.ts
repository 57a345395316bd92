/**
 * The structure of one unit, apart from where it lies: units of one shape are routed once. Nodes are numbered by first
 * appearance in its legs; nodes that only pass by (shared by units before and after) follow.
 */
export interface Shape {
  readonly nodes: number;
  /** shared with earlier units, ascending: the order of a state at the boundary before this unit */
  readonly left: readonly number[];
  /** shared with later units, in the order in which the next unit has them as its `left` */
  readonly right: readonly number[];
  /** shared by the first and the last unit of a ring only */
  readonly seam: readonly number[];
  readonly from: readonly number[];
  readonly to: readonly number[];
  /** passes asked; a knot counts as one */
  readonly asked: readonly number[];
  /** what an added pass costs per mm: 1 on an under-leg, 3 where it is seen */
  readonly price: readonly number[];
  readonly legClass: readonly number[];
  readonly first: boolean;
  readonly last: boolean;
}

/** A part as a sequence of shapes. */
export interface Layout {
  /** shapes by number, with those of other chains */
  readonly shapes: readonly Shape[];
  readonly shapeOf: Int32Array;
  /** for each shape that occurs, the mean length of each of its legs over all its units, mm */
  readonly lengths: ReadonlyMap<number, Float64Array>;
  /** chain nodes of group g by local number: nodes[nodeStart[g] + local] */
  readonly nodes: readonly number[];
  readonly nodeStart: Int32Array;
}

/** Units of one shape that follow each other: the shape and how many. */
export function* repeated(shapeOf: Int32Array): Generator<[shape: number, count: number]> {
  for (let g = 0; g < shapeOf.length; ) {
    let end = g + 1;
    while (end < shapeOf.length && shapeOf[end] === shapeOf[g]) end++;
    yield [shapeOf[g], end - g];
    g = end;
  }
}
