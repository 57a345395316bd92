import { availableParallelism } from 'node:os';
import { MessageChannel, receiveMessageOnPort, Worker } from 'node:worker_threads';
import { countsFor, countTiles, type Room, type StopTotals } from '../check/density/tile-counts.js';
import { alone, type Call, type TileCrew } from '../check/density/tile-crew.js';
import { AT_WORK, AWAITED, nextTile, type Post, type Shift, STATE, TOO_LATE } from './density-shift.js';

/** So many stitches are worth a second thread, which takes a tenth of a second to come. */
const WORTH_IT = 200_000;
/** Who tells nothing for so long is not waited for any more, ms. */
const PATIENCE = 60_000;
/** The second thread's own file, built or as it is written. */
const SECOND = import.meta.url.endsWith('.ts') ? './density-worker.ts' : './density-worker.js';

/** For large work a crew of two, where the machine has two cores; whoever has counted a tile takes the next. */
export const crewOfTwo: Call = (stitches) =>
  stitches >= WORTH_IT && availableParallelism() > 1 ? withSecond() : alone(stitches);

const room: Room = (bytes) => new SharedArrayBuffer(bytes);

function withSecond(): TileCrew {
  const shared = new Int32Array(new SharedArrayBuffer(8));
  const { port1, port2 } = new MessageChannel();
  const workerData: Post = { port: port2, shared };
  const second = new Worker(new URL(SECOND, import.meta.url), { workerData, transferList: [port2] });
  // without it the other one counts all
  second.on('error', () => {});
  second.unref();
  return {
    room,
    count(sewn, tiles) {
      const counts = countsFor(tiles.length, room);
      const ends = new Float64Array(new SharedArrayBuffer(sewn.ends.byteLength));
      ends.set(sewn.ends);
      const shift: Shift = { sewn: { ...sewn, ends }, tiles, counts };
      port1.postMessage(shift);
      const own = countTiles(sewn, tiles, counts, nextTile(shared));
      const hasCome = Atomics.compareExchange(shared, STATE, AWAITED, TOO_LATE) !== AWAITED;
      if (hasCome) Atomics.wait(shared, STATE, AT_WORK, PATIENCE);
      const told = receiveMessageOnPort(port1);
      port1.close();
      if (!hasCome) return { counts, totals: [own] };
      if (told) return { counts, totals: [own, told.message as StopTotals[]] };
      return alone(tiles.length).count(sewn, tiles);
    },
  };
}
