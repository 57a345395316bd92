import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileExpression, ExpressionError } from '../../src/stitches/expression.js';

const names = new Map([
  ['width', 0],
  ['repeat', 1],
]);
const slots = Float64Array.of(8, 6);
const value = (source: string | number) => compileExpression(source, names)(slots);

describe('arithmetic in a stitch file', () => {
  test.each([
    ['width / 2 - 1', 3],
    ['2 + 3 * 4 ^ 2', 50],
    ['2 ^ 3 ^ 2', 512],
    ['10 - 4 - 3', 3],
    ['24 / 4 / 2', 3],
    ['-width', -8],
    ['-(2 ^ 2)', -4],
    ['+repeat', 6],
    ['- -repeat', 6],
    ['min(width, repeat, 7)', 6],
    ['max(width, repeat)', 8],
    ['abs(repeat - width)', 2],
    ['sqrt(repeat * repeat + width * width)', 10],
    ['round(2.5) + floor(2.9) + ceil(2.1)', 8],
    ['sin(30)', 0.5],
    ['cos(60)', 0.5],
    ['tan(45)', 1],
    ['2 * pi', 2 * Math.PI],
    ['1.5e1', 15],
    ['.5', 0.5],
  ])('%s is %d (angles in degrees)', (source, expected) => {
    expect(value(source)).toBeCloseTo(expected, 12);
  });

  test('a plain number stands for itself', () => {
    expect(value(-2.25)).toBe(-2.25);
  });

  const tree = fc.letrec<{ node: { text: string; number: number } }>((tie) => ({
    node: fc.oneof(
      { depthSize: 'small', withCrossShrink: true },
      fc
        .double({ min: 0, max: 50, noNaN: true, noDefaultInfinity: true })
        .map((n) => ({ text: `${n}`, number: n })),
      fc.constantFrom({ text: 'width', number: 8 }, { text: 'repeat', number: 6 }),
      fc.tuple(tie('node'), fc.constantFrom('+', '-', '*', '/'), tie('node')).map(([a, sign, b]) => ({
        text: `(${a.text} ${sign} ${b.text})`,
        number:
          sign === '+'
            ? a.number + b.number
            : sign === '-'
              ? a.number - b.number
              : sign === '*'
                ? a.number * b.number
                : a.number / b.number,
      })),
    ),
  })).node;
  test('any sum of products comes out as it does by hand', () => {
    fc.assert(
      fc.property(tree, ({ text, number }) => {
        fc.pre(text.length <= 200 && !/e-?\d/.test(text));
        expect(value(text)).toBe(number);
      }),
    );
  });

  test.each([
    'constructor',
    '__proto__',
    'this',
    'prototype',
    'globalThis',
    'process.exit(1)',
    'width.constructor',
    'width["constructor"]',
    'constructor.constructor("return 1")()',
    'sin.call(1)',
    'min(1)(2)',
    'toString()',
    'hasOwnProperty(1)',
    // biome-ignore lint/suspicious/noTemplateCurlyInString: that a template string is refused is the point
    '`${width}`',
    '"text"',
    "'8' + 1",
    'width ? 1 : 2',
    'width, repeat',
    'width repeat',
    '[1, 2]',
    '{}',
    'width = 3',
    'width == 8',
    'width && repeat',
    '!width',
    '~width',
    'width % 2',
    'width ** 2',
    'x => x',
    'new Date',
    'true',
    'null',
    '(1 + 2',
    '1 +',
    '',
    ' ',
    '1e999',
    '-2 ^ 2',
    'sin()',
    'sin(1, 2)',
    'min()',
    'max(1,,2)',
    '/a/',
    'width; 1',
    'width // 2',
    '＋1',
    '\u0000',
  ])('%j is refused with a message', (source) => {
    expect(() => value(source)).toThrow(ExpressionError);
  });

  test('what is too long or too deep is refused before it can do harm', () => {
    expect(() => value(`${'('.repeat(5000)}1${')'.repeat(5000)}`)).toThrow(/too long/);
    expect(() => value(`${'-'.repeat(150)}1`)).toThrow(/nested too deeply/);
    expect(() => value(Array(60).fill('1').join('^'))).toThrow(/nested too deeply/);
  });

  test('parentheses alone are not depth', () => {
    expect(value(`${'('.repeat(90)}1${')'.repeat(90)}`)).toBe(1);
  });

  test('any text at all gives a number or a message', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(...'width()+-*/^.,0 e[]"`{}$') })),
        (source) => {
          try {
            expect(value(source)).toBeTypeOf('number');
          } catch (error) {
            expect(error).toBeInstanceOf(ExpressionError);
          }
        },
      ),
      { numRuns: 500 },
    );
  });

  test('an unknown name is answered with the known ones', () => {
    expect(() => value('widht / 2')).toThrow(
      '"widht" is not a known quantity; known here: width, repeat, pi',
    );
  });
});
