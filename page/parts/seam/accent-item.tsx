import type { Accent, Treatment } from '../../../src/formats/dressing.js';
import type { Line } from '../../core/messages.js';
import {
  AWAY,
  GRADES,
  type Grading,
  gradingOf,
  HAND_SIZES,
  HAND_THINGS,
  withAccent,
  withAccentSize,
  withAlternate,
  withFigureOn,
  withGrading,
  withHandThing,
  withoutAccent,
} from '../../state/accent-edits.js';
import { change } from '../../state/actions.js';
import { stitchOf } from '../../state/line-facts.js';
import { withFurtherThread } from '../../state/row-edits.js';
import { everyTitle, seatsOf, seatTitle } from '../../state/seats.js';
import { lengthIn } from '../../state/units.js';
import { figures, work } from '../../state/work.js';
import { Choice } from '../choice.js';
import { Measure } from '../measure.js';
import { Spools } from '../spools.js';
import { Weight } from '../weight.js';

interface Item {
  readonly line: Line;
  readonly treatment: Treatment;
  readonly accent: Accent;
  readonly nth: number;
}

/** One accent: what it is, where it sits, how large, which way. */
export function AccentItem({ line, treatment, accent, nth }: Item) {
  const figure = figures.value.find(({ name }) => name === accent.ornament);
  const edit = (to: (one: Accent) => Accent, grip: string | null = null) =>
    change((was) => withAccent(was, line, nth, to), grip && `${grip} ${line} accent ${nth}`);
  const { every = 1, from = 0 } = accent;
  const { min, max } = figure?.size ?? HAND_SIZES;
  const grading = figure ? gradingOf(accent, figure) : 'alike';
  const things = [...new Set([...HAND_THINGS, ...(accent.byHand ? [accent.byHand] : [])])];
  return (
    <li>
      <div class="part-head">
        <strong>Accent {nth + 1}</strong>
        <button type="button" class="quiet" onClick={() => change((was) => withoutAccent(was, line, nth))}>
          Take it off
        </button>
      </div>
      <label class="choice">
        <span>What it is</span>
        <select
          aria-label="What it is"
          value={accent.ornament ?? `hand ${accent.byHand}`}
          onChange={({ currentTarget: { value } }) => {
            const other = figures.value.find(({ name }) => name === value);
            const spools = work.value?.dressing.threads.length ?? 1;
            edit((one) =>
              other ? withFigureOn(one, other, spools) : withHandThing(one, value.replace('hand ', '')),
            );
          }}
        >
          <optgroup label="sewn">
            {figures.value.map(({ name, title }) => (
              <option key={name} value={name}>
                {title}
              </option>
            ))}
          </optgroup>
          <optgroup label="put on by hand">
            {things.map((thing) => (
              <option key={thing} value={`hand ${thing}`}>
                {thing}
              </option>
            ))}
          </optgroup>
        </select>
      </label>
      {treatment.rows.length > 1 && (
        <Choice
          title="Sits on row"
          value={String(accent.row)}
          options={treatment.rows.map((row, r) => [
            String(r),
            `${r + 1}: ${stitchOf(row.stitch)?.title ?? row.stitch}`,
          ])}
          isOpen={(row) => seatsOf(treatment, Number(row)).length > 0}
          onChoose={(row) =>
            edit((one) => {
              const seats = seatsOf(treatment, Number(row));
              return { ...one, row: Number(row), seat: seats.includes(one.seat) ? one.seat : seats[0] };
            })
          }
        />
      )}
      <Choice
        title="Sits on"
        value={accent.seat}
        options={[...new Set([...seatsOf(treatment, accent.row), accent.seat])].map((seat) => [
          seat,
          seatTitle(seat),
        ])}
        onChoose={(seat) => edit((one) => ({ ...one, seat }))}
      />
      <Choice
        title="Of these"
        value={String(every)}
        options={[...new Set([1, 2, 3, 4, 5, 6, every])]
          .sort((a, b) => a - b)
          .map((count) => [String(count), everyTitle(count)])}
        onChoose={(count) =>
          edit((one) => ({ ...one, every: Number(count), from: Math.min(from, Number(count) - 1) }))
        }
      />
      {every > 1 && (
        <Measure
          title="Beginning at"
          value={from + 1}
          min={1}
          max={Math.max(every, from + 1)}
          step={1}
          show={(place) => `seat ${place}`}
          onChange={(place) => edit((one) => ({ ...one, from: place - 1 }), 'from')}
        />
      )}
      <Measure
        title="Its size"
        value={accent.parameters.size ?? figure?.size.default ?? HAND_SIZES.min}
        min={min}
        max={max}
        step={0.1}
        show={lengthIn}
        onChange={(size) => edit((one) => withAccentSize(one, size, figure), 'size')}
      />
      {figure && (
        <Choice
          title="From seat to seat"
          value={grading ?? ''}
          options={[
            ['alike', 'all alike'],
            ['turn', 'large and small in turn'],
            ['three', 'graded, small to large'],
            ['wave', 'graded, up and down'],
            ...(grading === null ? ([['', 'as it came']] as const) : []),
          ]}
          onChoose={(kind) => kind in GRADES && edit((one) => withGrading(one, kind as Grading, figure))}
        />
      )}
      {figure && (
        <Measure
          title="Turned"
          value={accent.turn ?? 0}
          min={-180}
          max={180}
          step={5}
          show={(degrees) => `${degrees}°`}
          onChange={(turn) => edit((one) => ({ ...one, turn }), 'turn')}
        />
      )}
      <Measure
        title="Off its seat"
        value={accent.away ?? 0}
        {...AWAY}
        show={(mm) => (mm === 0 ? 'on it' : lengthIn(mm))}
        onChange={(away) => edit((one) => ({ ...one, away }), 'away')}
      />
      {figure && (
        <>
          <Weight
            row={accent}
            onWeigh={({ passes, heavy }) => edit((one) => ({ ...one, passes, heavy }), 'weight')}
          />
          {Array.from({ length: figure.threads }, (_, k) => (
            <Spools
              key={k}
              title={k === 0 ? 'Thread' : `Thread ${k + 1}`}
              chosen={k === 0 ? accent.thread : (accent.moreThreads?.[k - 1] ?? accent.thread)}
              onChoose={(thread) =>
                edit((one) => (k === 0 ? { ...one, thread } : withFurtherThread(one, k, thread)))
              }
            />
          ))}
        </>
      )}
      <button type="button" onClick={() => change((was) => withAlternate(was, line, nth))}>
        Alternate with another
      </button>
    </li>
  );
}
