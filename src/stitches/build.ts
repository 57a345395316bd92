import { float64s } from '../geometry/flat.js';
import type { Point } from '../geometry/point.js';
import { reversed } from '../geometry/polyline.js';
import { InputError } from '../input-error.js';
import { MEASURES, type PlannedPoint } from './arithmetics.js';
import type { Plan, PlannedLeg } from './compile.js';
import { curvePath, loopPaths, polylinePath, smoothPath } from './leg-path.js';
import { addMistake, type Mistake } from './mistake.js';
import { nearestName } from './nearest-name.js';
import type { Unit, UnitLeg, Values } from './stitch.js';

/** No repeat of hand embroidery on a block reaches further, in mm; beyond it the arithmetic of a file has gone astray. */
const FURTHEST = 500;
/** Joined holes may lie this far apart, in mm: rounding of double arithmetic, generously. */
const SAME_HOLE = 1e-6;

/** What the arithmetic of a file comes to cannot be sewn: its first mistake is told, all of them are there. */
export class UnitError extends InputError {
  constructor(
    name: string,
    readonly mistakes: readonly Mistake[],
  ) {
    const [{ place, wrong, right }] = mistakes;
    super('stitch-arithmetic', `${name} ${place}`, wrong, right);
  }
}

/**
 * Builds one unit of a stitch, or an ornament.
 * @throws InputError when a value is unknown or out of range; UnitError when the file's arithmetic gives no place to sew
 */
export function buildUnit(plan: Plan, values: Values): Unit {
  const slots = fillSlots(plan, values);
  const isOrnament = !plan.parameters.some(({ name }) => name === 'repeat');
  const length = isOrnament ? 0 : slots[plan.parameters.length];
  const mistakes: Mistake[] = [];
  const at = plan.points.map((point) => place(slots, point, mistakes));
  const nodeOf = new Map(plan.nodes.map((point, node) => [point, node]));
  const nodes = polylinePath(plan.nodes.map((point) => at[point]));
  const sizes = plan.legs.map((leg) => sizeOf(slots, leg, mistakes));
  const seats = plan.seats.map((seat) => {
    const own: Mistake[] = [];
    const [u, v] = place(slots, seat, own);
    // a seat that is a point is as wrong as that one, and it has been told
    if (own.length && !plan.points.some((point) => point.u === seat.u)) mistakes.push(...own);
    return { name: seat.name, u, v };
  });
  if (!mistakes.length) checkJoins(plan, nodes, length, mistakes);
  if (mistakes.length) throw new UnitError(plan.name, mistakes);

  const legs: UnitLeg[] = [];
  const closing: number[] = [];
  const ending: UnitLeg[] = [];
  plan.legs.forEach((leg, index) => {
    const isLoop = leg.kind === 'loop';
    pathsOf(plan, leg, at, sizes[index]).forEach((path, half) => {
      if (plan.closing.has(index)) closing.push(legs.length);
      (leg.onlyAtEnd ? ending : legs).push({
        name: leg.name,
        kind: leg.kind,
        from: nodeOf.get(half ? leg.to : leg.from)!,
        to: nodeOf.get(half ? leg.from : leg.to)!,
        path,
        share: leg.share,
        bends: leg.anchor < 0,
        anchor: nodeOf.get(leg.anchor < 0 ? leg.from : leg.anchor)!,
        class: index,
        size: isLoop ? 0 : sizes[index],
        thread: leg.thread,
      });
    });
  });
  return {
    length,
    nodes,
    joins: plan.joins,
    legs,
    closing,
    ending,
    seats,
    ...extent(legs, [...closing.map((i) => legs[i]), ...ending], length),
  };
}

function fillSlots(plan: Plan, values: Values): Float64Array {
  for (const name of Object.keys(values)) {
    if (plan.parameters.some((parameter) => parameter.name === name)) continue;
    const names = plan.parameters.map((parameter) => parameter.name);
    throw new InputError(
      'unknown-parameter',
      plan.name,
      `it has no parameter "${name}"`,
      `did you mean "${nearestName(name, names)}"? It has ${names.join(', ')}`,
    );
  }
  const slots = float64s(plan.parameters.length + MEASURES + plan.measures.length);
  plan.parameters.forEach(({ name, unit, min, max, default: usual }, slot) => {
    const value = Object.hasOwn(values, name) ? values[name] : usual;
    const [least, most] = plan.ranges[slot];
    const slack = 1e-9 * Math.max(Math.abs(least), Math.abs(most));
    if (!(value >= least - slack && value <= most + slack)) {
      const in_ = unit === 'mm' ? ' mm' : unit === 'degree' ? ' degrees' : '';
      throw new InputError(
        'parameter-out-of-range',
        `${plan.name} ${name}`,
        `${value}${in_} is out of range`,
        `${min} to ${max}${in_}`,
      );
    }
    if (unit === 'count' && !Number.isInteger(value)) {
      const right = `a whole number, ${min} to ${max}`;
      throw new InputError('parameter-not-whole', `${plan.name} ${name}`, `${value} is no count`, right);
    }
    slots[slot] = value;
  });
  const lengthSlot = plan.parameters.length;
  const whole = slots[plan.parameters.findIndex(({ name }) => name === 'repeat' || name === 'size')];
  slots[lengthSlot] = plan.glide ? whole / 2 : whole;
  plan.measures.forEach((measure, i) => {
    slots[lengthSlot + MEASURES + i] = measure.value(slots);
  });
  return slots;
}

function place(slots: Float64Array, point: PlannedPoint, mistakes: Mistake[]): Point {
  const at: Point = [point.u(slots), point.v(slots)];
  if (!(Math.abs(at[0]) <= FURTHEST && Math.abs(at[1]) <= FURTHEST)) {
    const wrong = `its arithmetic gives (${at[0]}, ${at[1]})`;
    addMistake(mistakes, `point "${point.name}"`, wrong, `a place within ${FURTHEST} mm`);
  }
  return at;
}

function sizeOf(slots: Float64Array, leg: PlannedLeg, mistakes: Mistake[]): number {
  const size = leg.size(slots);
  if (!(size >= 0 && size <= FURTHEST)) {
    const wrong = `its arithmetic gives a width of ${size}`;
    addMistake(mistakes, `leg "${leg.name}"`, wrong, `0 to ${FURTHEST} mm`);
  }
  return size;
}

function pathsOf(plan: Plan, leg: PlannedLeg, at: readonly Point[], size: number): Float64Array[] {
  if (leg.beneath >= 0) {
    const cover = plan.legs[leg.beneath];
    const [path] = pathsOf(plan, cover, at, size);
    return [cover.from === leg.from ? path : reversed(path)];
  }
  const from = at[leg.from];
  const to = at[leg.to];
  const through = [from, ...leg.via.map((point) => at[point]), to];
  if (leg.kind === 'loop') return loopPaths(from, to, size);
  if (leg.bend === 'led') return [smoothPath(through)];
  return [leg.bend === 'pulled' ? curvePath(through) : polylinePath(through)];
}

function checkJoins(plan: Plan, nodes: Float64Array, length: number, mistakes: Mistake[]): void {
  const hand = plan.glide ? -1 : 1;
  for (const [here, next] of plan.joins) {
    const du = nodes[2 * here] - (nodes[2 * next] + length);
    const dv = nodes[2 * here + 1] - hand * nodes[2 * next + 1];
    if (Math.hypot(du, dv) <= SAME_HOLE) continue;
    const [a, b] = [here, next].map((node) => plan.points[plan.nodes[node]].name);
    const wrong = `it is ${Math.hypot(du, dv).toFixed(3)} mm from "${b}" of the next unit`;
    addMistake(mistakes, `joins "${a}"`, wrong, 'both must be the same hole');
  }
}

/** How far needle points reach to both hands, before the first unit, and past the end of the last. */
function extent(
  legs: readonly UnitLeg[],
  atEnd: readonly UnitLeg[],
  length: number,
): Pick<Unit, 'reach' | 'overhang'> {
  const reach = { left: 0, right: 0 };
  const overhang = { start: 0, end: 0 };
  const take = (leg: UnitLeg, shift: number) => {
    // Satin and knots are as wide as they are, whatever their middle line does.
    const around = leg.size / 2;
    for (let i = 0; i < leg.path.length; i += 2) {
      const [u, v] = [leg.path[i] + shift, leg.path[i + 1]];
      reach.left = Math.max(reach.left, v + around);
      reach.right = Math.max(reach.right, around - v);
      overhang.start = Math.max(overhang.start, around - u);
      overhang.end = Math.max(overhang.end, u + around - length);
    }
  };
  for (const leg of legs) take(leg, 0);
  for (const leg of atEnd) take(leg, length);
  return { reach, overhang };
}
