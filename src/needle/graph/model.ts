import type { Passes } from './passes.js';
import type { Layout, Shape } from './shape.js';

/** A repeat that others should be like. */
export interface Model {
  readonly shape: Shape;
  readonly passes: Uint8Array;
}

/** The passes that most repeats have, the ends left out where there are others. */
export function modelOf(layout: Layout, passes: Passes): Model {
  const counts = new Map<number, number>();
  const inner = passes.of.length > 2 ? 1 : 0;
  let best = inner;
  let most = 0;
  for (let g = inner; g < passes.of.length - inner; g++) {
    const key = layout.shapeOf[g] * 2 ** 20 + passes.of[g];
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    if (count > most) {
      most = count;
      best = g;
    }
  }
  return { shape: layout.shapes[layout.shapeOf[best]], passes: passes.patterns[passes.of[best]] };
}

/** Whether all units have the passes of the model wherever it says any. */
export function keepsTo(model: Model, layout: Layout, passes: Passes): boolean {
  let shape = -1;
  let pattern = -1;
  for (let g = 0; g < passes.of.length; g++) {
    if (layout.shapeOf[g] === shape && passes.of[g] === pattern) continue;
    shape = layout.shapeOf[g];
    pattern = passes.of[g];
    const sewn = passes.patterns[pattern];
    if (wantedAs(model, layout.shapes[shape]).some((count, leg) => count > 0 && count !== sewn[leg]))
      return false;
  }
  return true;
}

/** For each visible leg of a unit the passes that its like has in the model, 0 when there is none. */
export function wantedAs(model: Model, shape: Shape): number[] {
  const taken = new Map<number, number>();
  return shape.legClass.map((cls, leg) => {
    if (shape.price[leg] === 1) return 0;
    const from = taken.get(cls) ?? -1;
    const like = model.shape.legClass.indexOf(cls, from + 1);
    if (like < 0) return 0;
    taken.set(cls, like);
    return model.shape.asked[like] === shape.asked[leg] ? model.passes[like] : 0;
  });
}
