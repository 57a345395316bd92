/** What reading and writing stitch files costs, beside a plain loop that copies the same bytes. */
import { built, ms, timed } from './built.js';
import { seeded } from './many-seams.js';

const { DstWriter } = await built<typeof import('../../src/formats/dst-write.js')>('formats/dst-write.js');
const { readDst } = await built<typeof import('../../src/formats/dst-read.js')>('formats/dst-read.js');

function moves(count: number): Int8Array {
  const random = seeded(7);
  return Int8Array.from({ length: 2 * count }, () => Math.round(40 * random() - 20));
}

function written(all: Int8Array): Uint8Array {
  const writer = new DstWriter(all.length / 2);
  for (let i = 0; i < all.length; i += 2) writer.stitch(all[i], all[i + 1]);
  return writer.file('bench');
}

function copied(bytes: Uint8Array): Uint8Array {
  const copy = new Uint8Array(bytes.length);
  for (let i = 0; i < bytes.length; i++) copy[i] = bytes[i];
  return copy;
}

export async function benchStitchFiles(): Promise<void> {
  console.log('\nstitch files written, read, and their bytes copied one by one:');
  for (const [count, runs] of [
    [10_000, 21],
    [100_000, 11],
    [1_000_000, 7],
    [5_000_000, 3],
  ] as const) {
    const all = moves(count);
    const bytes = written(all);
    const write = await timed(runs, () => written(all));
    const read = await timed(runs, () => readDst(bytes, 'bench.dst'));
    const copy = await timed(runs, () => copied(bytes));
    const times = (one: { median: number }) => (one.median / copy.median).toFixed(1);
    const { kinds, moves: steps, records } = readDst(bytes, 'bench.dst');
    const memory = (kinds.byteLength + steps.byteLength + records.byteLength) / count;
    console.log(
      `${String(count).padStart(8)} stitches: written in ${ms(write)}, ${times(write)} times the copy; read in ${ms(read)}, ` +
        `${times(read)} times; copied in ${ms(copy)}; ${memory.toFixed(0)} bytes a stitch when read`,
    );
  }
}
