/**
 * A small reader of DST files that shares nothing with the project's own: it looks at one bit at a time and recomputes
 * every number of the header. Layout of the bits: from memory, as the trade knows it.
 */
export interface LittleRecord {
  kind: 'stitch' | 'jump' | 'change';
  dx: number;
  dy: number;
}

const BITS: [byte: number, bit: number, axis: 'x' | 'y', value: number][] = [
  [0, 0, 'x', 1],
  [0, 1, 'x', -1],
  [0, 2, 'x', 9],
  [0, 3, 'x', -9],
  [0, 4, 'y', -9],
  [0, 5, 'y', 9],
  [0, 6, 'y', -1],
  [0, 7, 'y', 1],
  [1, 0, 'x', 3],
  [1, 1, 'x', -3],
  [1, 2, 'x', 27],
  [1, 3, 'x', -27],
  [1, 4, 'y', -27],
  [1, 5, 'y', 27],
  [1, 6, 'y', -3],
  [1, 7, 'y', 3],
  [2, 2, 'x', 81],
  [2, 3, 'x', -81],
  [2, 4, 'y', -81],
  [2, 5, 'y', 81],
];

export function littleRecord(bytes: ArrayLike<number>, at = 0): LittleRecord {
  const move = { x: 0, y: 0 };
  for (const [byte, bit, axis, value] of BITS) {
    if (Math.floor(bytes[at + byte] / 2 ** bit) % 2 === 1) move[axis] += value;
  }
  const top = Math.floor(bytes[at + 2] / 64);
  if (top === 3) return { kind: 'change', dx: 0, dy: 0 };
  return { kind: top === 2 ? 'jump' : 'stitch', dx: move.x, dy: move.y };
}

/** All records up to the end mark, which has to be the last three bytes. */
export function littleRecords(file: Uint8Array): LittleRecord[] {
  const records: LittleRecord[] = [];
  for (let at = 512; at < file.length - 3; at += 3) records.push(littleRecord(file, at));
  if ([...file.slice(-3)].join() !== '0,0,243' || file.length % 3 !== 512 % 3) throw new Error('no end mark');
  return records;
}

/** Header fields by name, as the text says. */
export function littleHeader(file: Uint8Array): Record<string, string> {
  const text = String.fromCharCode(...file.slice(0, 512));
  const end = text.indexOf('\x1a');
  if (text.slice(end + 1).trim() !== '' || text.length !== 512)
    throw new Error('header not filled with spaces');
  const fields = text.slice(0, end).split('\r');
  if (fields.pop() !== '') throw new Error('the last field is not ended');
  return Object.fromEntries(fields.map((field) => [field.slice(0, 3), field.slice(3)]));
}

/** What the header's numbers should be, from the records alone. */
export function littleSummary(records: readonly LittleRecord[]): Record<string, number> {
  const xs = [0];
  const ys = [0];
  for (const { dx, dy } of records) {
    xs.push(xs[xs.length - 1] + dx);
    ys.push(ys[ys.length - 1] + dy);
  }
  const most = (values: number[]) => values.reduce((a, b) => Math.max(a, b));
  const least = (values: number[]) => values.reduce((a, b) => Math.min(a, b));
  return {
    'ST:': records.length,
    'CO:': records.filter((record) => record.kind === 'change').length,
    '+X:': most(xs),
    '-X:': 0 - least(xs),
    '+Y:': most(ys),
    '-Y:': 0 - least(ys),
    'AX:': xs[xs.length - 1],
    'AY:': ys[ys.length - 1],
    'MX:': 0,
    'MY:': 0,
  };
}

/** The header's numbers as written. */
export function littleNumbers(file: Uint8Array): Record<string, number> {
  const { 'LA:': _, 'PD:': __, ...numbers } = littleHeader(file);
  return Object.fromEntries(
    Object.entries(numbers).map(([key, text]) => [key, Number(text.replace(/[+-]\s*/, (s) => s.trim()))]),
  );
}
