import { availableParallelism } from 'node:os';
import { MessageChannel, receiveMessageOnPort, Worker } from 'node:worker_threads';
import { countTiles, type StopTotals } from '../check/density/tile-counts.js';
import { ALONE, type TileCrew } from '../check/density/tile-crew.js';
import { AT_WORK, AWAITED, nextTile, type Shift, STATE, TOO_LATE } from './density-shift.js';

/** So many stitches are worth a second thread, which takes a tenth of a second to come. */
const WORTH_IT = 200_000;
/** Who tells nothing for so long is not waited for any more, ms. */
const PATIENCE = 60_000;
/** The second thread's own file, built or as it is written. */
const SECOND = import.meta.url.endsWith('.ts') ? './density-worker.ts' : './density-worker.js';

/** For large work a crew of two, where the machine has two cores; whoever has counted a tile takes the next. */
export const crewOfTwo: TileCrew = {
  room: (bytes) => new SharedArrayBuffer(bytes),
  count(sewn, tiles, counts) {
    if (sewn.ends.length < 4 * WORTH_IT || availableParallelism() < 2)
      return ALONE.count(sewn, tiles, counts);
    const ends = new Float64Array(new SharedArrayBuffer(sewn.ends.byteLength));
    ends.set(sewn.ends);
    const shared = new Int32Array(new SharedArrayBuffer(8));
    const { port1, port2 } = new MessageChannel();
    const workerData: Shift = { ends, stops: sewn.stops, counts, shared, port: port2 };
    const second = new Worker(new URL(SECOND, import.meta.url), { workerData, transferList: [port2] });
    // without it the other one counts all
    second.on('error', () => {});
    second.unref();
    const own = countTiles(sewn, tiles, counts, nextTile(shared));
    const hasCome = Atomics.compareExchange(shared, STATE, AWAITED, TOO_LATE) !== AWAITED;
    if (hasCome) Atomics.wait(shared, STATE, AT_WORK, PATIENCE);
    const told = receiveMessageOnPort(port1);
    port1.close();
    if (!hasCome) return [own];
    if (told) return [own, told.message as StopTotals[]];
    for (const cells of Object.values(counts)) cells.fill(0);
    return ALONE.count(sewn, tiles, counts);
  },
};
