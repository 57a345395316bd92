import jsep from 'jsep';

/**
 * Arithmetic for stitch files: numbers, names, + - * / ^, parentheses and a few functions. It computes numbers and
 * can do nothing else: no members, no indexing, no text, no calls but those listed here.
 *
 * Angles are degrees, as everywhere in files that people edit. `^` is a power and binds to the right. A sign directly
 * before a power (-2^2) is refused, because people read it in two ways.
 */
export type Evaluate = (slots: Float64Array) => number;

export class ExpressionError extends Error {
  constructor(
    readonly wrong: string,
    readonly right: string,
    /** the name in it that is no quantity, when that is what is wrong */
    readonly unknown: string | null = null,
  ) {
    super(`${wrong}; ${right}`);
    this.name = 'ExpressionError';
  }
}

const LONGEST = 200;
const DEEPEST = 24;
const DEGREE = Math.PI / 180;

const functions = new Map<string, { apply: (...x: number[]) => number; least: number; most: number }>([
  ['min', { apply: Math.min, least: 1, most: 8 }],
  ['max', { apply: Math.max, least: 1, most: 8 }],
  ['abs', { apply: Math.abs, least: 1, most: 1 }],
  ['sqrt', { apply: Math.sqrt, least: 1, most: 1 }],
  ['sin', { apply: (x) => Math.sin(x * DEGREE), least: 1, most: 1 }],
  ['cos', { apply: (x) => Math.cos(x * DEGREE), least: 1, most: 1 }],
  ['tan', { apply: (x) => Math.tan(x * DEGREE), least: 1, most: 1 }],
  ['round', { apply: Math.round, least: 1, most: 1 }],
  ['floor', { apply: Math.floor, least: 1, most: 1 }],
  ['ceil', { apply: Math.ceil, least: 1, most: 1 }],
]);

const binary = new Map<string, (a: number, b: number) => number>([
  ['+', (a, b) => a + b],
  ['-', (a, b) => a - b],
  ['*', (a, b) => a * b],
  ['/', (a, b) => a / b],
  ['^', (a, b) => a ** b],
]);

/** Names that a stitch file cannot give away. */
export const reservedNames: ReadonlySet<string> = new Set(['pi', 'length', 'i', ...functions.keys()]);

// The parser's tables are its own; set them once to this grammar.
jsep.removeAllUnaryOps();
jsep.removeAllBinaryOps();
jsep.removeAllLiterals();
for (const sign of ['-', '+']) jsep.addUnaryOp(sign);
for (const sum of ['+', '-']) jsep.addBinaryOp(sum, 9);
for (const product of ['*', '/']) jsep.addBinaryOp(product, 10);
jsep.addBinaryOp('^', 11, true);

/**
 * Compiles a number or a piece of arithmetic; `names` gives the slot of each name it may use.
 * @throws ExpressionError saying what is wrong and what would be right
 */
export function compileExpression(source: number | string, names: ReadonlyMap<string, number>): Evaluate {
  if (typeof source === 'number') return () => source;
  if (source.length > LONGEST) {
    throw new ExpressionError(`arithmetic of ${source.length} signs is too long`, `at most ${LONGEST} signs`);
  }
  return compileNode(parse(source), names, 0);
}

function parse(source: string): jsep.Expression {
  try {
    return jsep(source);
  } catch (error) {
    const { description, index } = error as { description?: string; index?: number };
    const place = index === undefined ? '' : ` at sign ${index + 1}`;
    throw new ExpressionError(
      `"${source}" is not arithmetic (${description ?? 'it cannot be read'}${place})`,
      'write numbers, names, + - * / ^ and parentheses',
    );
  }
}

function compileNode(node: jsep.Expression, names: ReadonlyMap<string, number>, depth: number): Evaluate {
  if (depth > DEEPEST) {
    throw new ExpressionError(
      'arithmetic is nested too deeply',
      `at most ${DEEPEST} levels; use a measure for a part`,
    );
  }
  const inner = (child: jsep.Expression) => compileNode(child, names, depth + 1);
  switch (node.type) {
    case 'Literal': {
      const { value } = node as jsep.Literal;
      if (typeof value !== 'number' || !Number.isFinite(value)) break;
      return () => value;
    }
    case 'Identifier':
      return compileName((node as jsep.Identifier).name, names);
    case 'UnaryExpression': {
      const { operator, argument } = node as jsep.UnaryExpression;
      const value = inner(argument);
      return operator === '-' ? (slots) => -value(slots) : value;
    }
    case 'BinaryExpression':
      return compileBinary(node as jsep.BinaryExpression, inner);
    case 'CallExpression':
      return compileCall(node as jsep.CallExpression, inner);
  }
  throw new ExpressionError(
    `arithmetic cannot hold ${plainKind[node.type] ?? 'that'}`,
    'write numbers, names, + - * / ^, parentheses and functions',
  );
}

const plainKind: Record<string, string> = {
  Literal: 'text or endless numbers',
  MemberExpression: 'a dot or an index after a name',
  ThisExpression: '"this"',
  ConditionalExpression: 'a choice with "?"',
  ArrayExpression: 'a list',
  Compound: 'two expressions side by side',
  SequenceExpression: 'two expressions side by side',
};

function compileName(name: string, names: ReadonlyMap<string, number>): Evaluate {
  if (name === 'pi') return () => Math.PI;
  const slot = names.get(name);
  if (slot === undefined) {
    throw new ExpressionError(
      `"${name}" is not a known quantity`,
      `known here: ${[...names.keys(), 'pi'].join(', ')}`,
      name,
    );
  }
  return (slots) => slots[slot];
}

function compileBinary(
  { operator, left, right }: jsep.BinaryExpression,
  inner: (child: jsep.Expression) => Evaluate,
): Evaluate {
  const apply = binary.get(operator);
  if (!apply) throw new ExpressionError(`"${operator}" is not arithmetic`, 'use + - * / ^');
  if (operator === '^' && left.type === 'UnaryExpression') {
    throw new ExpressionError('a sign before a power can be read in two ways', 'write -(x^2), or (0 - x)^2');
  }
  const a = inner(left);
  const b = inner(right);
  return (slots) => apply(a(slots), b(slots));
}

function compileCall(
  { callee, arguments: given }: jsep.CallExpression,
  inner: (child: jsep.Expression) => Evaluate,
): Evaluate {
  const name = callee.type === 'Identifier' ? (callee as jsep.Identifier).name : '';
  const known = functions.get(name);
  if (!known) {
    throw new ExpressionError(
      name ? `"${name}" is not a known function` : 'only a named function can be called',
      `known: ${[...functions.keys()].join(', ')}`,
    );
  }
  if (given.length < known.least || given.length > known.most) {
    const wanted = known.least === known.most ? `${known.least}` : `${known.least} to ${known.most}`;
    throw new ExpressionError(`${name}() was given ${given.length} numbers`, `it takes ${wanted}`);
  }
  const values = given.map(inner);
  const { apply } = known;
  if (values.length === 1) return (slots) => apply(values[0](slots));
  return (slots) => apply(...values.map((value) => value(slots)));
}
