import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dstHeader } from '../../src/formats/dst-header.js';
import { readDst } from '../../src/formats/dst-read.js';
import { DstWriter } from '../../src/formats/dst-write.js';
import { CHANGE, JUMP, STITCH } from '../../src/formats/stitch-file.js';
import { InputError } from '../../src/input-error.js';
import { littleHeader, littleNumbers, littleRecords, littleSummary } from './little-dst.js';

type Move = ['stitch' | 'jump', number, number] | ['change'];
const step = fc.integer({ min: -121, max: 121 });
const anyMove: fc.Arbitrary<Move> = fc.oneof(
  { weight: 5, arbitrary: fc.tuple(fc.constant('stitch' as const), step, step) },
  { weight: 3, arbitrary: fc.tuple(fc.constant('jump' as const), step, step) },
  { weight: 1, arbitrary: fc.constant<Move>(['change']) },
);
const someMoves = fc.array(anyMove, { maxLength: 60 });

function written(moves: readonly Move[], name = 'panel'): Uint8Array {
  const writer = new DstWriter(1);
  for (const move of moves) {
    if (move[0] === 'change') writer.change();
    else writer[move[0]](move[1], move[2]);
  }
  return writer.file(name);
}

function refused(bytes: Uint8Array): InputError {
  try {
    readDst(bytes, 'panel.dst');
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('the file was read');
}

const everyKind: Move[] = [
  ['jump', 121, -121],
  ['stitch', 0, 0],
  ['stitch', -81, 40],
  ['change'],
  ['change'],
  ['jump', 0, 0],
  ['stitch', 1, -1],
  ['change'],
];

describe('a written DST file', () => {
  it('has the moves, and header numbers that follow from them', () => {
    fc.assert(
      fc.property(someMoves, (moves) => {
        const file = written(moves);
        const records = littleRecords(file);
        expect(records.map((r) => (r.kind === 'change' ? [r.kind] : [r.kind, r.dx, r.dy]))).toEqual(moves);
        expect(littleNumbers(file)).toEqual(littleSummary(records));
      }),
    );
  });

  it('has all header fields in order, at their widths, then 1A', () => {
    const file = written(everyKind, 'Gärtnerschürze, Tasche');
    const header = littleHeader(file);
    expect(Object.keys(header)).toEqual([
      'LA:',
      'ST:',
      'CO:',
      '+X:',
      '-X:',
      '+Y:',
      '-Y:',
      'AX:',
      'AY:',
      'MX:',
      'MY:',
      'PD:',
    ]);
    expect(Object.values(header).map((text) => text.length)).toEqual([16, 7, 3, 5, 5, 5, 5, 6, 6, 6, 6, 6]);
    expect(header['LA:']).toBe('Gartnerschurze, ');
    expect(header['PD:']).toBe('******');
    for (const field of ['AX:', 'AY:', 'MX:', 'MY:']) expect(header[field]).toMatch(/^[+-] *\d+$/);
  });

  it('spells a name that ASCII lacks, and one with line ends, without breaking the header', () => {
    for (const name of ['缝纫', 'a\rST:9\n', '🪡🪡', '']) {
      const header = littleHeader(written(everyKind, name));
      expect(header['LA:']).toMatch(/^[\x20-\x7e]{16}$/);
      expect(Object.keys(header)).toHaveLength(12);
    }
  });

  it('counts the start among its extents: work that lies all to one side still reaches back to 0', () => {
    const file = written([
      ['jump', 100, 100],
      ['stitch', 20, 20],
      ['stitch', 5, -10],
    ]);
    expect(littleNumbers(file)).toMatchObject({
      '+X:': 125,
      '-X:': 0,
      '+Y:': 120,
      '-Y:': 0,
      'AX:': 125,
      'AY:': 110,
    });
  });

  it('refuses a number too wide for its field', () => {
    const far = (count: number) => {
      const writer = new DstWriter();
      for (let i = 0; i < count; i++) writer.jump(-121, 0);
      return () => writer.file('far');
    };
    expect(far(826)).not.toThrow(); // 99,946 steps
    expect(far(827)).toThrow(InputError);
    const halts = (count: number) => {
      const writer = new DstWriter();
      for (let i = 0; i < count; i++) writer.change();
      return () => writer.file('halts');
    };
    expect(halts(999)).not.toThrow();
    expect(halts(1000)).toThrow(
      /1000 color changes; a file holds at most 999; with one stop for each thread there are fewer/,
    );
    const many = (records: number) => () =>
      dstHeader('many', { records, changes: 0, left: 0, right: 0, below: 0, above: 0, endX: 0, endY: 0 });
    expect(many(9_999_999)).not.toThrow();
    expect(many(10_000_000)).toThrow(/10000000 stitch records; a file holds at most 9999999/);
  });
});

describe('a DST file read', () => {
  it('gives back what was written', () => {
    fc.assert(
      fc.property(someMoves, (moves) => {
        const bytes = written(moves, 'Apron');
        const file = readDst(bytes, 'apron.dst');
        expect(file.label).toBe('Apron');
        expect(file.records).toEqual(bytes.slice(512, -3));
        const kind = { stitch: STITCH, jump: JUMP, change: CHANGE };
        expect([...file.kinds]).toEqual(moves.map((move) => kind[move[0]]));
        expect([...file.moves]).toEqual(
          moves.flatMap((move) => (move[0] === 'change' ? [0, 0] : [move[1], move[2]])),
        );
      }),
    );
  });

  it('keeps records byte for byte, odd spellings included', () => {
    // +1 and -1 at once, a color change with digits, bit 6 alone
    const odd = Uint8Array.of(0x03, 0, 0x03, 0x01, 0, 0xc3, 0x01, 0, 0x43);
    const bytes = written([]);
    const file = readDst(Uint8Array.of(...bytes.slice(0, 512), ...odd, 0, 0, 0xf3), 'odd.dst');
    expect(file.records).toEqual(odd);
    expect([...file.kinds]).toEqual([STITCH, CHANGE, JUMP]);
    expect([...file.moves]).toEqual([0, 0, 0, 0, 1, 0]);
    const writer = new DstWriter();
    writer.keep(file.records);
    expect(writer.records()).toEqual(odd);
  });

  it('may have padding behind the end mark, and nothing else', () => {
    const bytes = written(everyKind);
    for (const padding of [[0x1a], [0, 0, 0, 0], [0x20, 0x20], [0x1a, 0x0d, 0x0a, 0, 0x20]]) {
      expect(readDst(Uint8Array.of(...bytes, ...padding), 'x').kinds).toHaveLength(everyKind.length);
    }
    for (const more of [[0x03], [0, 0, 3], [0, 0, 0xf3]]) {
      const at = bytes.length + more.findIndex((byte) => byte !== 0);
      expect(refused(Uint8Array.of(...bytes, ...more)).where).toBe(`panel.dst byte ${at}`);
    }
  });

  it('cut off anywhere is refused, and the place is named', () => {
    const bytes = written(everyKind);
    for (let length = 0; length < bytes.length; length++) {
      const error = refused(bytes.slice(0, length));
      expect(error.where).toBe(`panel.dst byte ${length < 3 ? 0 : length}`);
      expect(error.message).not.toContain('\n');
    }
  });

  it('without LA: or with a record that ends wrongly is refused at that byte', () => {
    const bytes = written(everyKind);
    expect(refused(bytes.with(1, 0x62)).where).toBe('panel.dst byte 0');
    for (const last of [0x00, 0x01, 0x02, 0xf0, 0xf1, 0xf2]) {
      expect(refused(bytes.with(512 + 3 * 4 + 2, last)).where).toBe(`panel.dst byte ${512 + 3 * 4 + 2}`);
    }
  });

  it('of random bytes, or with bytes changed, is read or refused, and never anything else', () => {
    const random = seeded(20);
    const whole = written([...everyKind, ...everyKind, ...everyKind]);
    let read = 0;
    let turnedAway = 0;
    for (let round = 0; round < 100_000; round++) {
      let bytes = whole.slice(0, random() % 4 === 0 ? random() % (whole.length + 1) : whole.length);
      const changes = random() % 4;
      for (let i = 0; i < changes && bytes.length; i++) {
        const at =
          random() % 3 === 0 ? random() % bytes.length : Math.max(0, bytes.length - 1 - (random() % 80));
        bytes[at] = random();
      }
      if (round % 16 === 0) bytes = bytes.map(() => random());
      try {
        const file = readDst(bytes, 'x');
        const { length } = file.kinds;
        if (file.records.length !== 3 * length || file.moves.length !== 2 * length)
          throw new Error('uneven records');
        read++;
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        turnedAway++;
      }
    }
    expect(read).toBeGreaterThan(1000);
    expect(turnedAway).toBeGreaterThan(1000);
  });
});

/** Whole numbers from 0 to 2^31 - 1, the same every time (Park and Miller's minimal standard generator). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state;
  };
}
