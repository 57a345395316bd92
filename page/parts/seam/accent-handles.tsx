import type { Accent } from '../../../src/formats/dressing.js';
import { AWAY, HAND_SIZES, withAccent, withAccentSize } from '../../state/accent-edits.js';
import { change } from '../../state/actions.js';
import { treatmentOf } from '../../state/edits.js';
import type { Choose } from '../../state/free-place.js';
import { acrossOf, lengthOf, type OnLine, placeAlong } from '../../state/handle-places.js';
import { lengthIn } from '../../state/units.js';
import { view } from '../../state/view.js';
import { figures, picture, pictured } from '../../state/work.js';
import type { OnSeam } from './more-handles.js';
import { SlideHandle } from './slide-handle.js';

/** So far off its figure the handle of a size stands, and what it takes, px. */
const CLEAR = 20;
const REACH = 12;
/** Further accents have their numbers alone. */
const MOST = 3;

/** One figure of each accent is dragged: off its seat by its middle, larger and smaller by what stands beside it. */
export function AccentHandles({ line, facts: { treatment }, points, choose }: OnSeam) {
  const middle = placeAlong(points, lengthOf(points) / 2);
  const places = (picture.value?.accents ?? []).filter((one) => one.line === line && one.nth < MOST);
  return (
    <>
      {places.map(({ nth, at }) => {
        const accent = treatment.accents?.[nth];
        return accent && <OneAccent key={nth} {...{ line, nth, at, accent, middle, choose }} />;
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
  readonly choose: Choose;
}

function OneAccent({ line, nth, at, accent, middle, choose }: One) {
  const figure = figures.value.find(({ name }) => name === accent.ornament);
  const { min, max } = figure?.size ?? HAND_SIZES;
  const size = accent.parameters.size ?? figure?.size.default ?? HAND_SIZES.min;
  const clear = CLEAR / view.value.scale;
  const beside = size / 2 + clear;
  // to whichever side of the figure there is room
  const { along, left } = middle;
  const ways = [along, along.map((d) => -d), left, left.map((d) => -d)].map(([wx, wy]) => ({
    at: [at[0] + wx * beside, at[1] + wy * beside] as const,
    way: [wx, wy] as const,
  }));
  const grip = choose(`accent ${nth}`, ways, REACH / view.value.scale);
  const on: OnLine = { ...middle, at };
  // away is upward on both hands; what it was when the figure was drawn where it lies
  const hand = acrossOf(middle, at) < 0 ? -1 : 1;
  const before = pictured.value && treatmentOf(pictured.value.dressing, line)?.accents?.[nth];
  const edit = (what: string, to: (one: Accent) => Accent) =>
    change((was) => withAccent(was, line, nth, to), `${what} ${line} accent ${nth}`);
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
        at={grip.at}
        value={size}
        min={min}
        max={max}
        step={0.1}
        show={lengthIn}
        measure={([x, y]) => 2 * ((x - at[0]) * grip.way[0] + (y - at[1]) * grip.way[1] - clear)}
        onBecome={(wanted) => edit('size', (one) => withAccentSize(one, wanted, figure))}
      />
    </>
  );
}
