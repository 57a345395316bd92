import { isBenchOpen } from '../state/bench/on-bench.js';
import { isDrawing } from '../state/drawing/board.js';
import { touched } from '../state/work.js';
import { Bench } from './bench/bench.js';
import { BenchComplaints } from './bench/bench-complaints.js';
import { ClearDraft } from './clear-draft.js';
import { Complaint } from './complaint.js';
import { Board } from './drawing/board.js';
import { DropPlace } from './drop-place.js';
import { Facts } from './facts.js';
import { FigureHandles } from './figure-handles.js';
import { Head } from './head.js';
import { LookBar } from './look-bar.js';
import { LookTold } from './look-told.js';
import { Panel } from './panel.js';
import { ScreenMeasure } from './screen-measure.js';
import { SeamHandles } from './seam-handles.js';
import { SewnCaption } from './sewn-caption.js';
import { SewnTo } from './sewn-to.js';
import { Table } from './table.js';
import { Told } from './told.js';

/** The whole page: the block on the table, what can be done with it beside it. */
export function Page() {
  if (isBenchOpen.value) {
    return (
      <DropPlace>
        <Bench />
        <BenchComplaints />
        <Complaint />
        <Told />
      </DropPlace>
    );
  }
  return (
    <DropPlace>
      <Head />
      <main class="room">
        <section class="table-side" aria-label="The block">
          <div class="table-room">
            {isDrawing.value ? <Board /> : <Table />}
            {!isDrawing.value && <SewnCaption />}
            {isDrawing.value ? null : touched.value !== null ? (
              <SeamHandles line={touched.value} />
            ) : (
              <FigureHandles />
            )}
            {!isDrawing.value && <ClearDraft />}
          </div>
          {!isDrawing.value && <LookTold />}
          {!isDrawing.value && <LookBar />}
          <div class="below">
            <Facts />
            {!isDrawing.value && <SewnTo />}
          </div>
        </section>
        <Panel />
      </main>
      <ScreenMeasure />
      <Complaint />
      <Told />
    </DropPlace>
  );
}
