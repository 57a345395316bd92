import type { Line } from '../core/messages.js';
import { handlePlaces } from '../state/handle-places.js';
import { lineFacts } from '../state/line-facts.js';
import { pointsOf } from '../state/lines-near.js';
import { lengthIn } from '../state/units.js';
import { view } from '../state/view.js';
import { repeatsOf } from '../state/words.js';
import { picture } from '../state/work.js';
import { SeamHandle } from './seam-handle.js';

/** So far off what they measure handles stand, px. */
const CLEAR = 26;

/** On the touched line: handles for its size and spacing, and how many repeats it has. */
export function SeamHandles({ line }: { line: Line }) {
  const facts = lineFacts(line);
  const points = picture.value && pointsOf(picture.value.block, line);
  const width = facts?.measure('width');
  const repeat = facts?.measure('repeat');
  if (!facts || !points || !width || !repeat) return null;
  const clear = CLEAR / view.value.scale;
  const places = handlePlaces(points, width.value, facts.repeatMm || repeat.value, clear);
  const on = ([x, y]: readonly [number, number]) => ({
    left: `${view.value.x + x * view.value.scale}px`,
    top: `${view.value.y + y * view.value.scale}px`,
  });
  return (
    <div class="on-table">
      <SeamHandle
        line={line}
        name="width"
        title="Size"
        kind="size"
        middle={places.middle}
        clear={clear}
        style={on(places.size)}
        {...width}
      />
      <SeamHandle
        line={line}
        name="repeat"
        title="Spacing"
        kind="spacing"
        middle={places.middle}
        clear={clear}
        style={on(places.spacing)}
        {...repeat}
      />
      {facts.repeats > 0 && (
        <p class="beside" style={on(places.label)}>
          {repeatsOf(facts.repeats, lengthIn(facts.repeatMm))}
        </p>
      )}
    </div>
  );
}
