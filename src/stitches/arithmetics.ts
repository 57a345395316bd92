import { compileExpression, type Evaluate, ExpressionError } from './expression.js';
import { addMistake, type Mistake } from './mistake.js';
import type { Parameter } from './stitch.js';
import type { Arithmetic, PlaceRecord } from './stitch-record.js';

/** Slots that stand behind the parameters' own. */
const LENGTH = 0;
const COPY = 1;
/** Where the measures' slots begin, counted from the end of the parameters. */
export const MEASURES = 2;

export interface PlannedPoint {
  readonly name: string;
  readonly u: Evaluate;
  readonly v: Evaluate;
}

/** Compiles the arithmetic of one file, with its names and their slots. */
export class Arithmetics {
  private readonly slots: Map<string, number>;
  private readonly copySlot: number;

  constructor(
    parameters: readonly Parameter[],
    private readonly mistakes: Mistake[],
  ) {
    this.slots = new Map(parameters.map((parameter, slot) => [parameter.name, slot]));
    this.slots.set('length', parameters.length + LENGTH);
    this.copySlot = parameters.length + COPY;
    this.slots.set('i', this.copySlot);
  }

  /** A quantity that all arithmetic after it may use by name. */
  measure(name: string, source: Arithmetic): Evaluate {
    const value = this.compile(source, `measures.${name}`, 0);
    this.slots.set(name, this.slots.size);
    return value;
  }

  place(name: string, [u, v]: PlaceRecord, where: string, i: number): PlannedPoint {
    return { name, u: this.compile(u, `${where}[0]`, i), v: this.compile(v, `${where}[1]`, i) };
  }

  /** Arithmetic for copy i. */
  compile(source: Arithmetic, where: string, i: number): Evaluate {
    try {
      const value = compileExpression(source, this.slots);
      if (i === 0) return value;
      const { copySlot } = this;
      return (slots) => {
        slots[copySlot] = i;
        const result = value(slots);
        slots[copySlot] = 0;
        return result;
      };
    } catch (error) {
      if (!(error instanceof ExpressionError)) throw error;
      addMistake(
        this.mistakes,
        where,
        error.wrong,
        error.right,
        error.unknown === null ? [] : [`quantities.${error.unknown}`],
      );
      return () => Number.NaN;
    }
  }
}
