import { draft } from '../../state/bench/on-bench.js';
import { BenchHead } from './bench-head.js';
import { BenchSide } from './bench-side.js';
import { Samples } from './samples.js';
import { Sheet } from './sheet.js';
import { Start } from './start.js';
import { Tools } from './tools.js';

/** The stitch bench: one repeat to be drawn, how it lies on seams below it, what it is made of beside it. */
export function Bench() {
  return (
    <>
      <BenchHead />
      {draft.value === null ? (
        <main class="bench-start">
          <Start />
        </main>
      ) : (
        <main class="room">
          <section class="bench" aria-label="One repeat of the stitch">
            <Tools />
            <Sheet />
            <Samples />
          </section>
          <BenchSide />
        </main>
      )}
    </>
  );
}
