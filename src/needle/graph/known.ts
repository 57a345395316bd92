import { int32s } from '../../geometry/flat.js';
import type { Boundary } from './boundary.js';
import { blankDraft } from './draft.js';
import type { Stage } from './enter-unit.js';
import type { Network } from './network.js';
import type { Sewing } from './route.js';
import type { Shape } from './shape.js';

/**
 * What has been worked out once and holds wherever it recurs, in this chain or another. It only saves time: a route is the same
 * with a fresh one.
 */
export class Known {
  readonly shapes: Shape[] = [];
  readonly shapeNumbers = new Map<string, number>();
  readonly crossings: Int32Array[] = [];
  readonly crossingNumbers = new Map<string, number>();
  readonly patterns: Uint8Array[] = [];
  readonly patternNumbers = new Map<string, number>();
  readonly boundaryNumbers = new Map<string, number>();
  readonly boundaries: string[] = [];
  /** boundary number before a unit, by the number of its shape, pattern and boundary number after it */
  readonly befores = new Numbers();
  readonly before: number[] = [];
  /** units alike in shape and passes; and those alike also in crossings and in what lies beyond */
  readonly sewnShapes = new Numbers();
  readonly kinds = new Numbers();
  /** stages by what the one before left */
  readonly following = new Map<string, Map<number, Stage | null>>();
  /** ways through a unit by all that decides them, then by the state before it */
  readonly networks = new Map<string, Map<Boundary, Network>>();
  readonly firstStages = new Map<string, readonly Stage[]>();
}

/** Numbers for triples of numbers, in order of appearance. */
export class Numbers {
  private readonly byPair = new Map<number, number>();
  private readonly byTriple = new Map<number, number>();

  /** The number of a triple of integers below 2^20 each. */
  of(a: number, b: number, c: number): number {
    const pair = a * WIDE + b;
    let p = this.byPair.get(pair);
    if (p === undefined) {
      p = this.byPair.size;
      this.byPair.set(pair, p);
    }
    const triple = p * WIDE + c;
    let t = this.byTriple.get(triple);
    if (t === undefined) {
      t = this.byTriple.size;
      this.byTriple.set(triple, t);
    }
    return t;
  }
}

const WIDE = 2 ** 20;

/** The number of an item by its text, kept in `list`. */
export function numberOf<T>(item: T, text: string, list: T[], numbers: Map<string, number>): number {
  let n = numbers.get(text);
  if (n === undefined) {
    n = list.length;
    numbers.set(text, n);
    list.push(item);
  }
  return n;
}

/** Working arrays for the nodes of one chain, used by its parts in turn, which share no node. */
export class Scratch {
  readonly lastUse: Int32Array;
  readonly uses: Int32Array;
  readonly stamp: Int32Array;
  readonly local: Int32Array;
  readonly localBefore: Int32Array;
  readonly degree: Int32Array;
  readonly drafts = [blankDraft(), blankDraft()];
  /** lengths and routes of detached figures, by shape and by kind: figures alike are routed once */
  readonly typicalLengths = new Map<number, Float64Array>();
  readonly figures = new Map<number, Sewing>();

  constructor(nodes: number) {
    this.lastUse = int32s(nodes).fill(-1);
    this.uses = int32s(nodes);
    this.stamp = int32s(nodes).fill(-1);
    this.local = int32s(nodes);
    this.localBefore = int32s(nodes);
    this.degree = int32s(nodes);
  }
}
