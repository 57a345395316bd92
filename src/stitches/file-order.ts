import { inJsonOrder, type JsonPath } from '../formats/json-order.js';
import type { Mistake } from './mistake.js';

/** Names in a file's places are shorter, or a message cuts them short. */
const LONGEST_NAME = 300;

export type Path = JsonPath;

/** Mistakes in the order in which a file has what they are about. */
export const inFileOrder = (mistakes: readonly Mistake[], json: unknown): Mistake[] =>
  inJsonOrder(mistakes, ({ place }) => pathOf(place, json), json);

/**
 * The keys that lead to a place as it is written in messages, `legs[2].via` or `joins "tip"`, as far as the value has them.
 * Names may have dots and spaces in them: of those that fit, the longest is meant.
 */
export function pathOf(place: string, json: unknown): Path {
  const called = /^(point|leg|joins) "([^"[]*)/.exec(place);
  if (called) return pathOfNamed(called[1], called[2], json);
  const path: (string | number)[] = [];
  let at = json;
  for (let rest = place; typeof at === 'object' && at !== null; ) {
    const found = stepInto(at, path.length ? rest : `.${rest}`);
    if (!found) break;
    path.push(found.key);
    at = (at as Record<string | number, unknown>)[found.key];
    rest = found.rest;
  }
  return path;
}

function stepInto(at: object, rest: string): { key: string | number; rest: string } | null {
  const index = /^\.?\[(\d+)\]/.exec(rest);
  if (Array.isArray(at)) {
    return index && Number(index[1]) < at.length
      ? { key: Number(index[1]), rest: rest.slice(index[0].length) }
      : null;
  }
  const said = rest.slice(1, LONGEST_NAME);
  const ends = [...said.matchAll(/[ .[]|$/g)].map(({ index: end }) => end).reverse();
  const end = ends.find((one) => Object.hasOwn(at, said.slice(0, one)));
  return end === undefined ? null : { key: said.slice(0, end), rest: rest.slice(end + 1) };
}

/** Points, legs and joins that a unit is built of go by their names. */
function pathOfNamed(kind: string, name: string, json: unknown): Path {
  const file = Object(json) as Record<string, unknown>;
  if (kind === 'leg') {
    const legs: unknown[] = Array.isArray(file.legs) ? file.legs : [];
    const named = (leg: unknown): boolean => {
      const { name: own, legs: copied } = Object(leg) as { name?: unknown; legs?: unknown };
      return own === name || (Array.isArray(copied) && copied.some(named));
    };
    const index = legs.findIndex(named);
    return index < 0 ? ['legs'] : ['legs', index];
  }
  const section = ['points', 'seats', 'joins'].find(
    (one) => (kind === 'joins') === (one === 'joins') && Object.hasOwn(Object(file[one]), name),
  );
  return section ? [section, name] : [];
}
