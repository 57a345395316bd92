import { release, whileTelling } from '../../state/actions.js';
import { bare } from '../../state/drawing/board.js';
import {
  layPhoto,
  markedMm,
  marks,
  photo,
  scalePhoto,
  strength,
  takePhotoAway,
  turnPhoto,
} from '../../state/drawing/photo.js';
import { FileButton } from '../file-button.js';
import { Measure } from '../measure.js';
import { LengthField } from './length-field.js';

/** A straight-down photo of the hooped block, to trace its seams where they really are. */
export function PhotoPanel() {
  const is = photo.value;
  // it is laid in the middle of the block
  if (!bare.value) return null;
  return (
    <section aria-label="Photo" class="photo-panel">
      <FileButton
        title={is ? 'Another photo' : 'Choose a photo'}
        accept="image/*"
        isOne
        onFiles={([file]) => whileTelling('Laying the photo down', () => layPhoto(file))}
      />
      {!is && (
        <p class="hint">
          Taken straight down on the hooped block, it lies behind the drawing and is kept with it.
        </p>
      )}
      {is && (
        <>
          <ol class="steps">
            <li class={marks.value.length === 0 ? 'now' : ''}>Touch a point on the photo.</li>
            <li class={marks.value.length === 1 ? 'now' : ''}>Touch another, as far off as can be.</li>
            <li class={marks.value.length === 2 ? 'now' : ''}>Say how far apart they are on the cloth.</li>
          </ol>
          {markedMm.value !== null && (
            <LengthField title="They are apart" value={markedMm.value} least={1} onChange={scalePhoto} />
          )}
          <p class="hint">Drag the photo to where it belongs.</p>
          <Measure
            title="Turned"
            value={is.placement.turn}
            min={-180}
            max={180}
            step={0.1}
            show={(turn) => `${turn.toFixed(1)}°`}
            onChange={turnPhoto}
          />
          <Measure
            title="Strength"
            value={strength.value}
            min={0}
            max={1}
            step={0.05}
            show={(share) => `${Math.round(100 * share)} %`}
            onChange={(share) => {
              strength.value = share;
              release();
            }}
          />
          <button type="button" class="quiet" onClick={takePhotoAway}>
            Take the photo away
          </button>
        </>
      )}
    </section>
  );
}
