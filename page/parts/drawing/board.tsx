import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { drawBoard } from '../../draw/board.js';
import { LyingPictures } from '../../draw/lying-pictures.js';
import {
  aim,
  bare,
  chosenLine,
  chosenPatch,
  drawing,
  places,
  showsThread,
  tool,
} from '../../state/drawing/board.js';
import { handleBoard } from '../../state/drawing/board-hands.js';
import { boardKey } from '../../state/drawing/board-keys.js';
import { hasCross } from '../../state/drawing/key-cross.js';
import { lineBegun } from '../../state/drawing/lines.js';
import { marks, photo, photoImage, strength } from '../../state/drawing/photo.js';
import { stroke } from '../../state/drawing/stroke-signal.js';
import { lengthIn } from '../../state/units.js';
import { isFitted, settle, view } from '../../state/view.js';
import { picture, work } from '../../state/work.js';
import { LinePoints } from './line-points.js';

/** The block as a board to draw its seams on. */
export function Board() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const queue = useRef(0);
  const pictures = useRef(new LyingPictures());

  const draw = () => {
    queue.current = 0;
    const element = canvas.current;
    const [on, lines] = [bare.value, drawing.value];
    if (!element || !on || !lines) return;
    const room = element.getBoundingClientRect();
    const dots = devicePixelRatio || 1;
    const [width, height] = [Math.round(room.width * dots), Math.round(room.height * dots)];
    if (element.width !== width || element.height !== height) Object.assign(element, { width, height });
    settle(room, on.block);
    const next = aim.value ? [aim.value.at] : [];
    const begun =
      stroke.value.length > 1
        ? stroke.value
        : lineBegun([...places.value, ...(places.value.length ? next : [])], tool.value === 'curved');
    const hidden = work.value?.hidden ?? [];
    const thread = showsThread.value &&
      picture.value && {
        stops: picture.value.stops.filter(({ title }) => !hidden.includes(title)),
        placement: picture.value.placement,
        pictures: pictures.current,
      };
    const isDone = drawBoard(element.getContext('2d')!, dots, {
      block: on.block,
      drawing: lines,
      view: view.value,
      chosenLine: chosenLine.value,
      chosenPatch: chosenPatch.value,
      begun,
      aim: aim.value,
      thread: thread || null,
      photo: photo.value &&
        photoImage.value && {
          image: photoImage.value,
          placement: photo.value.placement,
          strength: strength.value,
          marks: tool.value === 'photo' ? marks.value : [],
        },
    });
    if (!isDone) queue.current ||= requestAnimationFrame(draw);
  };

  useSignalEffect(() => {
    void [
      bare.value,
      drawing.value,
      view.value,
      isFitted.value,
      chosenLine.value,
      chosenPatch.value,
      tool.value,
      picture.value,
      showsThread.value,
    ];
    void [places.value, stroke.value, aim.value, photo.value, photoImage.value, strength.value, marks.value];
    queue.current ||= requestAnimationFrame(draw);
  });
  useEffect(() => {
    const watch = new ResizeObserver(() => {
      queue.current ||= requestAnimationFrame(draw);
    });
    watch.observe(canvas.current!);
    const off = handleBoard(canvas.current!);
    canvas.current!.focus();
    return () => {
      watch.disconnect();
      off();
    };
  }, []);

  return (
    <>
      {/* biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: keys go from line to line in it */}
      <canvas
        ref={canvas}
        class={`table board ${tool.value}`}
        tabIndex={0}
        role="application"
        aria-label={
          hasCross()
            ? `The lines of the block. Arrow keys move a cross by ${lengthIn(5)}, with Shift by ${lengthIn(0.5)}; Enter sets a place there, twice at one place ends the seam.`
            : tool.value === 'fabric'
              ? 'The patches of the block. Arrow keys go from patch to patch, Enter goes to the color of the chosen one.'
              : 'The lines of the block. Arrow keys go from line to line, Enter goes to the points of the chosen line, Delete takes it out.'
        }
        onKeyDown={(event) => {
          if (boardKey(event)) event.preventDefault();
        }}
      >
        The lines of the block
      </canvas>
      {chosenLine.value !== null && tool.value === 'move' && <LinePoints id={chosenLine.value} />}
    </>
  );
}
