import { release } from '../../state/actions.js';
import { bare, chosenPatch } from '../../state/drawing/board.js';
import { clotheFromPhoto, dye } from '../../state/drawing/fabrics.js';
import { photo, photoImage } from '../../state/drawing/photo.js';
import { FabricPhoto } from './fabric-photo.js';

/** Patches and their fabrics, as swatches; the chosen one can be changed. */
export function FabricPanel() {
  const patches = bare.value?.block.patches ?? [];
  if (patches.length === 0) {
    return <p class="hint">There are no patches yet: seams that close something make them.</p>;
  }
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
                onInput={({ currentTarget }) => dye(id, currentTarget.value)}
                onChange={release}
              />
              Patch {id}
            </label>
          </li>
        ))}
      </ul>
      {photo.value && photoImage.value && (
        <button type="button" onClick={() => void clotheFromPhoto()}>
          All colors from the photo behind the block
        </button>
      )}
      <FabricPhoto />
    </section>
  );
}
