import { useState } from 'preact/hooks';
import type { Dressing } from '../../src/formats/dressing.js';
import type { StopLine } from '../../src/report/dress-report.js';
import type { DrawnStop, Picture } from '../core/messages.js';
import { change } from '../state/actions.js';
import { withMoved } from '../state/order.js';
import { picture, work } from '../state/work.js';
import { Choice } from './choice.js';
import { type LockedStop, LockedStops } from './locked-stops.js';
import { StopItem } from './stop-item.js';
import { WhereSewn } from './whole/where-sewn.js';

/** The color stops in the order of sewing: dragged into another, hidden, recolored; what came with the block is locked. */
export function StopsList() {
  const [over, setOver] = useState<number | null>(null);
  const now = picture.value;
  const dressing = work.value?.dressing;
  if (!now || !dressing) return null;
  const stops = now.report.stops;
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
        {partsOf(stops, now, dressing).map((part) =>
          'locked' in part ? (
            <LockedStops key={`locked ${part.locked[0].place}`} block={now.block} stops={part.locked} />
          ) : (
            <StopItem
              key={part.key}
              stop={stops[part.place]}
              block={now.block}
              thread={part.thread}
              isOver={over === part.place}
              onOver={setOver}
              onMove={(to) => change((was) => withMoved(was, stops, part.place, to))}
            />
          ),
        )}
      </ol>
    </section>
  );
}

type Part =
  | { readonly locked: readonly LockedStop[] }
  | { readonly place: number; readonly key: string; readonly thread: DrawnStop };

/** New stops one by one, and between them what came with the block, as far as it follows each other. */
function partsOf(stops: readonly StopLine[], picture: Picture, { block }: Dressing): Part[] {
  // both stand in the report in the order in which they are drawn
  const existing = picture.block.existing.filter(({ stop }) => !block.leaveOut?.includes(stop));
  const parts: Part[] = [];
  let run: LockedStop[] | null = null;
  let [drawn, came] = [0, 0];
  // what is moved stays what it is, and the hand on it
  const alike = new Map<string, number>();
  for (const [place, { kind, title }] of stops.entries()) {
    if (kind !== 'existing') {
      run = null;
      const nth = alike.get(title) ?? 0;
      alike.set(title, nth + 1);
      parts.push({ place, key: `${title} ${nth}`, thread: picture.stops[drawn++] });
      continue;
    }
    if (!run) {
      run = [];
      parts.push({ locked: run });
    }
    run.push({ place, runs: existing[came++]?.runs ?? [] });
  }
  return parts;
}
