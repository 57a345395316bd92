import { Complaint } from './complaint.js';
import { DropPlace } from './drop-place.js';
import { Facts } from './facts.js';
import { Head } from './head.js';
import { LookBar } from './look-bar.js';
import { Panel } from './panel.js';
import { ScreenMeasure } from './screen-measure.js';
import { Table } from './table.js';
import { Told } from './told.js';

/** The whole page: the block on the table, what can be done with it beside it. */
export function Page() {
  return (
    <DropPlace>
      <Head />
      <main class="room">
        <section class="table-side" aria-label="The block">
          <Table />
          <LookBar />
          <Facts />
        </section>
        <Panel />
      </main>
      <ScreenMeasure />
      <Complaint />
      <Told />
    </DropPlace>
  );
}
