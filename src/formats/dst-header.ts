import { InputError } from '../input-error.js';

export const HEADER_LENGTH = 512;

/** What the header says of the records. Lengths in steps of 0.1 mm, y up. */
export interface DstSummary {
  /** records before the end mark */
  readonly records: number;
  readonly changes: number;
  /** furthest positions over all records and the start, from the start: at most 0 to the left and below, else at least 0 */
  readonly left: number;
  readonly right: number;
  readonly below: number;
  readonly above: number;
  /** end minus start */
  readonly endX: number;
  readonly endY: number;
}

/**
 * The 512 bytes before the records: ASCII fields, each ended by a carriage return, then 1A, then spaces. The name is cut
 * to 16 characters and spelled in ASCII.
 * @throws InputError when a number is too wide for its field
 */
export function dstHeader(name: string, s: DstSummary): Uint8Array {
  const fields = [
    `LA:${asciiName(name).padEnd(16)}`,
    `ST:${inField('stitch records', s.records, 7)}`,
    `CO:${inField('color changes', s.changes, 3, '; with one stop for each thread there are fewer')}`,
    `+X:${inField('steps to the right of the start', s.right, 5)}`,
    `-X:${inField('steps to the left of the start', -s.left, 5)}`,
    `+Y:${inField('steps above the start', s.above, 5)}`,
    `-Y:${inField('steps below the start', -s.below, 5)}`,
    `AX:${signed('steps from start to end', s.endX)}`,
    `AY:${signed('steps from start to end', s.endY)}`,
    `MX:${signed('steps to a next file', 0)}`,
    `MY:${signed('steps to a next file', 0)}`,
    'PD:******',
  ];
  const text = `${fields.map((field) => `${field}\r`).join('')}\x1a`.padEnd(HEADER_LENGTH);
  return Uint8Array.from(text, (char) => char.charCodeAt(0));
}

/** @param way what makes it fit, for whoever is told that it does not */
function inField(what: string, value: number, width: number, way = ''): string {
  const digits = String(Math.abs(value));
  if (digits.length > width) {
    const most = 10 ** width - 1;
    throw new InputError(
      'stitch-file-field',
      'stitch file',
      `${digits} ${what}`,
      `a file holds at most ${most}${way}`,
    );
  }
  return digits.padStart(width);
}

const signed = (what: string, value: number): string => (value < 0 ? '-' : '+') + inField(what, value, 5);

/** Accents are dropped from letters (NFD splits them off); whatever else is no printable ASCII becomes an underscore. */
function asciiName(name: string): string {
  const plain = name.normalize('NFD').replace(/\p{Mark}/gu, '');
  return plain.replace(/[^\x20-\x7e]/gu, '_').slice(0, 16);
}
