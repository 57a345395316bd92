import type { StopLine } from '../../src/report/dress-report.js';
import type { DrawnBlock, DrawnStop } from '../core/messages.js';
import { become, change } from '../state/actions.js';
import { withThreadColor } from '../state/edits.js';
import { isMovable } from '../state/order.js';
import { minutes } from '../state/words.js';
import { touched, work } from '../state/work.js';
import { DragGrip } from './drag-grip.js';
import { ThreadPicture } from './thread-picture.js';

interface Item {
  readonly stop: StopLine;
  readonly block: DrawnBlock;
  readonly thread: DrawnStop;
  readonly isOver: boolean;
  readonly onOver: (place: number | null) => void;
  readonly onMove: (to: number) => void;
}

/** One new color stop in the order of sewing. */
export function StopItem({ stop, block, thread, isOver, onOver, onMove }: Item) {
  const { title, kind, seams } = stop;
  const place = stop.stop - 1;
  const isHidden = work.value?.hidden.includes(title) ?? false;
  return (
    <li class={isOver ? 'over' : ''} data-place={place}>
      {isMovable(stop) ? (
        <DragGrip title={title} place={place} onOver={onOver} onMove={onMove} />
      ) : (
        <span class="grip" title={kind} />
      )}
      <ThreadPicture block={block} thread={thread} />
      <button
        type="button"
        class="what"
        onClick={() => {
          if (seams.length === 1) touched.value = seams[0];
        }}
      >
        {title}
        <span class="aside">{minutes(stop.minutes)}</span>
      </button>
      <ThreadColor hex={thread.hex} />
      <button
        type="button"
        class="eye"
        aria-label={`${isHidden ? 'Show' : 'Hide'} ${title}`}
        onClick={() => hideOrShow(title)}
      >
        {isHidden ? 'Show' : 'Hide'}
      </button>
    </li>
  );
}

/** The color of a thread, wherever it is used. */
function ThreadColor({ hex }: { hex: string }) {
  const threads = work.value?.dressing.threads ?? [];
  const index = threads.findIndex((one) => one.hex === hex);
  if (index < 0) return <span class="spool" style={{ background: hex }} />;
  return (
    <input
      type="color"
      class="thread-color"
      aria-label={`Color of ${threads[index].name}, wherever it is used`}
      value={hex}
      onChange={({ currentTarget }) => change((was) => withThreadColor(was, index, currentTarget.value))}
    />
  );
}

function hideOrShow(title: string): void {
  const now = work.value;
  if (!now) return;
  const isHidden = now.hidden.includes(title);
  become({ ...now, hidden: isHidden ? now.hidden.filter((one) => one !== title) : [...now.hidden, title] });
}
