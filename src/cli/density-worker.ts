import { workerData } from 'node:worker_threads';
import { countTiles } from '../check/density/tile-counts.js';
import { AT_WORK, AWAITED, DONE, nextTile, type Post, type Shift, STATE } from './density-shift.js';

/** The second thread of a crew, see crewOfTwo. */
const { port, shared } = workerData as Post;
port.once('message', ({ sewn, tiles, counts }: Shift) => {
  if (Atomics.compareExchange(shared, STATE, AWAITED, AT_WORK) === AWAITED) {
    port.postMessage(countTiles(sewn, tiles, counts, nextTile(shared)));
    Atomics.store(shared, STATE, DONE);
    Atomics.notify(shared, STATE);
  }
  port.close();
});
