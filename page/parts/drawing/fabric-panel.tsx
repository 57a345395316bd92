import { release } from '../../state/actions.js';
import { bare, chosenPatch } from '../../state/drawing/board.js';
import { clothe } from '../../state/drawing/fabrics.js';
import { photo } from '../../state/drawing/photo.js';
import { photoColor } from '../../state/drawing/photo-color.js';

/** Patches and their fabrics, as swatches; the chosen one can be changed. */
export function FabricPanel() {
  const patches = bare.value?.block.patches ?? [];
  const isPhoto = photo.value !== null;
  return (
    <section aria-label="Fabrics">
      <ul class="fabrics">
        {patches.map(({ id, fill }) => (
          <li key={id} class={chosenPatch.value === id ? 'chosen' : ''}>
            <label>
              <input
                type="color"
                value={fill}
                onFocus={() => {
                  chosenPatch.value = id;
                }}
                onInput={({ currentTarget }) => clothe(id, currentTarget.value)}
                onChange={release}
              />
              Patch {id}
            </label>
          </li>
        ))}
      </ul>
      {isPhoto && (
        <button
          type="button"
          onClick={() => {
            for (const { id, rings } of patches) {
              const hex = photoColor(rings);
              if (hex) clothe(id, hex);
            }
            release();
          }}
        >
          Take all colors from the photo
        </button>
      )}
      {!isPhoto && <p class="hint">With a photo behind the drawing, colors can be taken from it.</p>}
    </section>
  );
}
