import type { Accent } from '../../../src/formats/dressing.js';
import { AWAY, HAND_SIZES, withAccent, withAccentSize } from '../../state/accent-edits.js';
import { change } from '../../state/actions.js';
import { treatmentOf } from '../../state/edits.js';
import { acrossOf, alongOf, lengthOf, type OnLine, placeAlong } from '../../state/handle-places.js';
import { lengthIn } from '../../state/units.js';
import { view } from '../../state/view.js';
import { figures, picture, pictured } from '../../state/work.js';
import type { OnSeam } from './more-handles.js';
import { SlideHandle } from './slide-handle.js';

/** So far off its figure the handle of a size stands, px. */
const CLEAR = 20;
/** Further accents have their numbers alone. */
const MOST = 3;

/** One figure of each accent is dragged: off its seat by its middle, larger and smaller by what stands beside it. */
export function AccentHandles({ line, facts: { treatment }, points }: OnSeam) {
  const middle = placeAlong(points, lengthOf(points) / 2);
  const places = (picture.value?.accents ?? []).filter((one) => one.line === line && one.nth < MOST);
  return (
    <>
      {places.map(({ nth, at }) => {
        const accent = treatment.accents?.[nth];
        return accent && <OneAccent key={nth} {...{ line, nth, at, accent, middle }} />;
      })}
    </>
  );
}

interface One {
  readonly line: OnSeam['line'];
  readonly nth: number;
  readonly at: readonly [number, number];
  readonly accent: Accent;
  readonly middle: OnLine;
}

function OneAccent({ line, nth, at, accent, middle }: One) {
  const figure = figures.value.find(({ name }) => name === accent.ornament);
  const { min, max } = figure?.size ?? HAND_SIZES;
  const size = accent.parameters.size ?? figure?.size.default ?? HAND_SIZES.min;
  const clear = CLEAR / view.value.scale;
  const beside = size / 2 + clear;
  const on: OnLine = { ...middle, at };
  // away is upward on both hands; what it was when the figure was drawn where it lies
  const hand = acrossOf(middle, at) < 0 ? -1 : 1;
  const before = pictured.value && treatmentOf(pictured.value.dressing, line)?.accents?.[nth];
  const edit = (grip: string, to: (one: Accent) => Accent) =>
    change((was) => withAccent(was, line, nth, to), `${grip} ${line} accent ${nth}`);
  return (
    <>
      <SlideHandle
        kind="accent-mark"
        label={`Accent ${nth + 1} off its seat`}
        at={at}
        value={accent.away ?? 0}
        {...AWAY}
        show={(mm) => (mm === 0 ? 'on it' : lengthIn(mm))}
        measure={(to) => (before?.away ?? 0) + hand * acrossOf(on, to)}
        onBecome={(away) => edit('away', (one) => ({ ...one, away }))}
      >
        {nth + 1}
      </SlideHandle>
      <SlideHandle
        kind="accent-size"
        label={`Size of accent ${nth + 1}`}
        at={[at[0] + middle.along[0] * beside, at[1] + middle.along[1] * beside]}
        value={size}
        min={min}
        max={max}
        step={0.1}
        show={lengthIn}
        measure={(to) => 2 * (alongOf(on, to) - clear)}
        onBecome={(wanted) => edit('size', (one) => withAccentSize(one, wanted, figure))}
      />
    </>
  );
}
