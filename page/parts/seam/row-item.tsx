import type { Row } from '../../../src/formats/dressing.js';
import type { Line } from '../../core/messages.js';
import { change } from '../../state/actions.js';
import { withRow } from '../../state/edits.js';
import { canStep, lineFacts, stitchOf } from '../../state/line-facts.js';
import {
  FARTHEST_ROW,
  offsetTold,
  withFurtherThread,
  withoutRow,
  withStitch,
} from '../../state/row-edits.js';
import { work } from '../../state/work.js';
import { Choice } from '../choice.js';
import { Measure } from '../measure.js';
import { Spools } from '../spools.js';
import { Weight } from '../weight.js';
import { Parameters } from './parameters.js';
import { StitchOptions } from './stitch-options.js';

interface Item {
  readonly line: Line;
  readonly rows: readonly Row[];
  readonly row: Row;
  readonly nth: number;
}

/** One row of a line. The first sets the step, the others keep it. */
export function RowItem({ line, rows, row, nth }: Item) {
  const stitch = stitchOf(row.stitch);
  const edit = (part: Partial<Row>, grip: string | null = null) =>
    change((was) => withRow(was, line, nth, (one) => ({ ...one, ...part })), grip);
  const isFirst = nth === 0;
  return (
    <li>
      <div class="part-head">
        <strong>Row {nth + 1}</strong>
        {!isFirst && (
          <button type="button" class="quiet" onClick={() => change((was) => withoutRow(was, line, nth))}>
            Take it off
          </button>
        )}
      </div>
      {!isFirst && (
        <label class="choice">
          <span>Stitch</span>
          <select
            aria-label="Stitch"
            value={row.stitch}
            onChange={({ currentTarget }) => {
              const other = stitchOf(currentTarget.value);
              const spools = work.value?.dressing.threads.length ?? 1;
              if (other) change((was) => withRow(was, line, nth, (one) => withStitch(one, other, spools)));
            }}
          >
            <StitchOptions />
          </select>
        </label>
      )}
      {isFirst && <p class="aside">{stitch?.title ?? row.stitch}: the others keep in step with it.</p>}
      <Choice
        title="Stands"
        value={row.flip ? 'over' : 'as'}
        options={[
          ['as', 'as the seam says'],
          ['over', 'to the other hand'],
        ]}
        onChoose={(way) => edit({ flip: way === 'over' })}
      />
      <Measure
        title="Off the seam"
        value={row.offset}
        min={-FARTHEST_ROW}
        max={FARTHEST_ROW}
        step={0.1}
        show={(mm) => offsetTold(mm, lineFacts(line)?.isTurnedOver ?? false)}
        onChange={(offset) => edit({ offset }, `offset ${line} ${nth}`)}
      />
      {!isFirst && (
        <>
          <Choice
            title="Repeats"
            value={String(row.times ?? 1)}
            options={[
              ['1', 'one for one'],
              ['2', 'two for one of the first'],
              ['0.5', 'one for two of the first'],
            ]}
            isOpen={(times) => canStep(rows[0], row, Number(times))}
            onChoose={(times) => edit({ times: Number(times) as Row['times'] })}
          />
          <Measure
            title="Step"
            value={row.step ?? 0}
            min={0}
            max={0.95}
            step={0.05}
            show={stepTold}
            onChange={(step) => edit({ step }, `step ${line} ${nth}`)}
          />
          <Parameters line={line} row={row} nth={nth} but={['repeat']} />
          <Weight
            row={row}
            onWeigh={({ passes, heavy }) => edit({ passes, heavy }, `weight ${line} row ${nth}`)}
          />
          <Spools title="Thread" chosen={row.thread} onChoose={(thread) => edit({ thread })} />
        </>
      )}
      {(stitch?.threads ?? []).slice(1).map((title, k) => (
        <Spools
          key={title}
          title={title || `Thread ${k + 2}`}
          chosen={row.moreThreads?.[k] ?? row.thread}
          onChoose={(thread) =>
            change((was) => withRow(was, line, nth, (one) => withFurtherThread(one, k + 1, thread)))
          }
        />
      ))}
    </li>
  );
}

function stepTold(share: number): string {
  if (share === 0) return 'in step';
  return share === 0.5 ? 'half' : `${Math.round(100 * share)} %`;
}
