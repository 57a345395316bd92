import { workerData } from 'node:worker_threads';
import { tilesOfCloth } from '../check/density/density.js';
import { countTiles } from '../check/density/tile-counts.js';
import { AT_WORK, AWAITED, DONE, nextTile, type Shift, STATE } from './density-shift.js';

/** The second thread of a crew, see crewOfTwo. */
const { ends, stops, counts, shared, port } = workerData as Shift;
const sewn = { ends, stops };
const { tiles } = tilesOfCloth(sewn);
if (Atomics.compareExchange(shared, STATE, AWAITED, AT_WORK) === AWAITED) {
  port.postMessage(countTiles(sewn, tiles, counts, nextTile(shared)));
  Atomics.store(shared, STATE, DONE);
  Atomics.notify(shared, STATE);
}
port.close();
