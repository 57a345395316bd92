import { useState } from 'preact/hooks';
import type { Dressing } from '../../src/formats/dressing.js';
import { change } from '../state/actions.js';
import { withMoved } from '../state/order.js';
import { picture, work } from '../state/work.js';
import { Choice } from './choice.js';
import { StopItem } from './stop-item.js';
import { WhereSewn } from './whole/where-sewn.js';

/** The color stops in the order of sewing: dragged into another, hidden, recolored; what came with the block is locked. */
export function StopsList() {
  const [over, setOver] = useState<number | null>(null);
  const now = picture.value;
  const dressing = work.value?.dressing;
  if (!now || !dressing) return null;
  const stops = now.report.stops;
  // new stops stand in the report in the order in which they are drawn
  let drawn = 0;
  return (
    <section>
      <h2>Order of sewing</h2>
      <Choice
        title="A stop for"
        value={dressing.stopPer ?? 'row'}
        options={[
          ['row', 'each row'],
          ['thread', 'each thread'],
          ['all', 'all of it together'],
        ]}
        onChoose={(stopPer) => change((was) => ({ ...was, stopPer: stopPer as Dressing['stopPer'] }))}
      />
      <WhereSewn />
      <ol class="stops">
        {stops.map((stop, i) => (
          <StopItem
            key={`${stop.title} ${i}`}
            stop={stop}
            block={now.block}
            thread={stop.kind === 'existing' ? null : now.stops[drawn++]}
            isOver={over === i}
            onOver={setOver}
            onMove={(to) => change((was) => withMoved(was, stops, i, to))}
          />
        ))}
      </ol>
    </section>
  );
}
