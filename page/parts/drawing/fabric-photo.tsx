import { useEffect, useRef } from 'preact/hooks';
import { whileTelling } from '../../state/actions.js';
import { chosenPatch } from '../../state/drawing/board.js';
import {
  chooseFabricPhoto,
  fabricPhoto,
  moveRing,
  ring,
  ringSize,
} from '../../state/drawing/fabric-photo.js';
import { clotheFromRing } from '../../state/drawing/fabrics.js';
import { FileButton } from '../file-button.js';
import { Measure } from '../measure.js';

/** Arrow keys move the ring by this share of the photo, with Shift by a fifth of it. */
const STEP = 0.05;

/** A photo of the fabrics: a touch on one gives it to the chosen patch. */
export function FabricPhoto() {
  const is = fabricPhoto.value;
  return (
    <>
      <FileButton
        title={is ? 'Another photo of the fabrics' : 'Pick from a photo of the fabrics'}
        accept="image/*"
        isOne
        onFiles={([file]) => whileTelling('Opening the photo', () => chooseFabricPhoto(file))}
      />
      {is && <Photo image={is.image} />}
    </>
  );
}

function Photo({ image }: { image: ImageBitmap }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const size = Math.min(1, 900 / Math.max(image.width, image.height));
    const [width, height] = [Math.round(image.width * size), Math.round(image.height * size)];
    Object.assign(canvas.current!, { width, height });
    canvas.current!.getContext('2d')!.drawImage(image, 0, 0, width, height);
  }, [image]);
  const [x, y] = ring.value;
  const wide = (100 * ringSize.value * Math.min(image.width, image.height)) / image.width;
  const patch = chosenPatch.value;
  return (
    <>
      <p class="hint">
        {patch === null
          ? 'Choose a patch, then touch its fabric on the photo.'
          : `Touch the fabric of patch ${patch}: it takes what lies in the ring, prints and all. Then the next patch.`}
      </p>
      {/* biome-ignore lint/a11y/useSemanticElements: where it is pressed tells what is picked */}
      <div
        class="fabric-photo"
        role="button"
        tabIndex={0}
        aria-label={`The photo of the fabrics. Arrow keys move the ring, Enter gives what lies in it to ${
          patch === null ? 'the chosen patch' : `patch ${patch}`
        }`}
        onClick={(event) => {
          const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
          moveRing([(event.clientX - left) / width, (event.clientY - top) / height]);
          void clotheFromRing();
        }}
        onKeyDown={(event) => {
          const way = WAYS[event.key];
          const step = event.shiftKey ? STEP / 5 : STEP;
          if (way) moveRing([x + way[0] * step, y + way[1] * step]);
          else if (event.key === 'Enter' || event.key === ' ') void clotheFromRing();
          else return;
          event.preventDefault();
        }}
      >
        <canvas ref={canvas} />
        <span class="ring" style={{ left: `${100 * x}%`, top: `${100 * y}%`, width: `${wide}%` }} />
      </div>
      <Measure
        title="Ring"
        value={ringSize.value}
        min={0.03}
        max={0.4}
        step={0.01}
        show={(share) => `${Math.round(100 * share)} %`}
        onChange={(share) => {
          ringSize.value = share;
        }}
      />
    </>
  );
}

const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
