import { draft } from '../../state/bench/on-bench.js';
import { FoundPart } from './found-part.js';
import { JoinsPart } from './joins-part.js';
import { KnownNames } from './known-names.js';
import { LegsPart } from './legs-part.js';
import { MannerPart } from './manner-part.js';
import { MeasuresPart } from './measures-part.js';
import { NamesPart } from './names-part.js';
import { PointPart } from './point-part.js';
import { SeatsPart } from './seats-part.js';
import { SizesPart } from './sizes-part.js';
import { ThreadsPart } from './threads-part.js';

/** What the stitch is made of. */
export function BenchSide() {
  const now = draft.value;
  if (!now) return null;
  const { record } = now;
  return (
    <aside class="panel bench-side" aria-label="What the stitch is made of">
      <KnownNames record={record} />
      <FoundPart />
      <PointPart record={record} />
      <LegsPart record={record} />
      <SizesPart record={record} />
      <MeasuresPart record={record} />
      <ThreadsPart record={record} />
      <JoinsPart record={record} />
      <SeatsPart record={record} />
      <MannerPart record={record} />
      <NamesPart name={now.name} record={record} />
    </aside>
  );
}
