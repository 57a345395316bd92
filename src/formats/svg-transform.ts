import { compose, fromDefinition, fromTransformAttribute, type Matrix, scale } from 'transformation-matrix';
import { InputError } from '../input-error.js';
import { readLength } from './svg-length.js';
import type { Look } from './svg-style.js';

/** Degrees in each unit of angle (CSS Values and Units Module Level 3). */
const DEGREES: Readonly<Record<string, number>> = { deg: 1, grad: 0.9, rad: 180 / Math.PI, turn: 360 };

/** Properties that move a shape as well and that no drawing program needs: refused, so that nothing is misplaced. */
const REFUSED = ['translate', 'rotate', 'scale', 'offset-path'] as const;

/** Longer than any list of transforms that a drawing program writes. */
const LONGEST = 4_000;

/**
 * An element's own transform, from its attribute or, stronger, from a style (CSS Transforms Module Level 1).
 *
 * @throws InputError when it is none, turns about a place of its own, or needs the third dimension
 */
export function transformOf(look: Look, place: string): Matrix {
  for (const name of REFUSED) {
    const value = look[name];
    if (value !== undefined && value !== 'none') refuse(place, name, value);
  }
  const text = (look.transform ?? '').replace(/\s+/g, ' ').trim();
  if (text.length > LONGEST) refuse(place, 'transform', text);
  if (text === '' || text === 'none') return scale(1);
  const origin = look['transform-origin'];
  if (origin !== undefined && !/^0(px|%)?(\s+0(px|%)?)*$/.test(origin))
    refuse(place, 'transform-origin', origin);
  try {
    return compose(fromDefinition(fromTransformAttribute(withoutUnits(text))));
  } catch {
    return refuse(place, 'transform', text);
  }
}

function refuse(place: string, name: string, value: string): never {
  const right = 'give a transform attribute such as rotate(30)';
  throw new InputError('bad-transform', place, `${name} is "${value}"`, right);
}

/** CSS functions as the attribute has them: pixels and degrees without a unit. */
function withoutUnits(text: string): string {
  return text.replace(/([a-z]+)\s*\(([^)]*)\)/gi, (_, name: string, list: string) => {
    const values = list
      .trim()
      .split(/\s*,\s*|\s+/)
      .map(plainNumber);
    if (name === 'translateX') return `translate(${values[0]},0)`;
    if (name === 'translateY') return `translate(0,${values[0]})`;
    if (name === 'scaleX') return `scale(${values[0]},1)`;
    if (name === 'scaleY') return `scale(1,${values[0]})`;
    return `${name}(${values.join(',')})`;
  });
}

/** Left as it stands, for the parser to refuse, when it is no number, angle or length. */
function plainNumber(text: string): string {
  const angle = /^([+-]?[\d.]+(?:e[+-]?\d+)?)(deg|grad|rad|turn)$/i.exec(text);
  if (angle) return String(Number(angle[1]) * DEGREES[angle[2].toLowerCase()]);
  const length = readLength(text, Number.NaN);
  return length === null || Number.isNaN(length) ? text : String(length);
}
