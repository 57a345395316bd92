/**
 * How a DST record spells its move: per axis five balanced ternary digits (Knuth, The Art of Computer Programming,
 * vol. 2, section 4.1) worth 1, 3, 9, 27 and 81 steps, two bits a digit. Steps of 0.1 mm, y up; codes are the three
 * bytes of a record as one number, first byte highest.
 */
export const LONGEST_MOVE = 121;

/** Bits 1 and 0 of the third byte are always set. */
export const STITCH_CODE = 0x000003;
export const JUMP_CODE = 0x000083;
export const CHANGE_CODE = 0x0000c3;
export const END_CODE = 0x0000f3;

/** [value of the digit, bit of +, bit of -] within the code. */
type DigitBits = readonly [value: number, plus: number, minus: number];
const X_DIGITS: readonly DigitBits[] = [
  [1, 16, 17],
  [3, 8, 9],
  [9, 18, 19],
  [27, 10, 11],
  [81, 2, 3],
];
const Y_DIGITS: readonly DigitBits[] = [
  [1, 23, 22],
  [3, 15, 14],
  [9, 21, 20],
  [27, 13, 12],
  [81, 5, 4],
];

/** Code bits of a move of d steps along x or y stand at index d + LONGEST_MOVE. */
export const X_CODE = spellings(X_DIGITS);
export const Y_CODE = spellings(Y_DIGITS);

/** What byte b, 0 to 2, of a record adds to the move stands at index 256 b + its value. */
export const X_STEPS = meanings(X_DIGITS);
export const Y_STEPS = meanings(Y_DIGITS);

/** Every choice of digits; balanced ternary spells each number once, so the 243 choices fill the table. */
function spellings(digits: readonly DigitBits[]): Int32Array {
  let spelled = new Map([[0, 0]]);
  for (const [value, plus, minus] of digits) {
    const longer = new Map(spelled);
    for (const [sum, code] of spelled) {
      longer.set(sum + value, code | (1 << plus));
      longer.set(sum - value, code | (1 << minus));
    }
    spelled = longer;
  }
  const table = new Int32Array(2 * LONGEST_MOVE + 1);
  for (const [sum, code] of spelled) table[sum + LONGEST_MOVE] = code;
  return table;
}

function meanings(digits: readonly DigitBits[]): Int16Array {
  const worth = new Int16Array(24);
  for (const [value, plus, minus] of digits) {
    worth[plus] = value;
    worth[minus] = -value;
  }
  const table = new Int16Array(3 * 256);
  for (let byte = 0; byte < 3; byte++) {
    const first = 8 * (2 - byte);
    for (let bit = 0; bit < 8; bit++) {
      // all values whose highest bit this is: the lower bits are known
      for (let lower = 0; lower < 1 << bit; lower++) {
        table[256 * byte + (1 << bit) + lower] = worth[first + bit] + table[256 * byte + lower];
      }
    }
  }
  return table;
}
