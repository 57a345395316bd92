import { change } from '../../state/actions.js';
import { bare } from '../../state/drawing/board.js';
import { lengthIn } from '../../state/units.js';
import { lookAt } from '../../state/view.js';
import { lineTitle } from '../../state/words.js';
import { offers } from '../../state/work.js';

/** Treatments that would not lie on a seam any more, by name. */
export function MissingList() {
  const missing = bare.value?.missing ?? [];
  if (missing.length === 0) return null;
  const titleOf = (name: string) =>
    offers.value.find((one) => one.shelf === 'stitch' && one.name === name)?.title ?? name;
  return (
    <section>
      <h2>Would miss their seam</h2>
      <ul class="findings">
        {missing.map(({ treatment, seam, stitches, at, off }) => (
          <li key={treatment}>
            <button type="button" class="error" disabled={!at} onClick={() => at && lookAt(at)}>
              <span class="sign">✕ wrong</span>
              <span>
                {stitches.map(titleOf).join(' with ')}, made for what was {lineTitle(seam)}
                {off === null ? ': there is no seam' : `: the nearest seam is ${lengthIn(off)} off`}
              </span>
            </button>
            <button
              type="button"
              class="quiet"
              onClick={() =>
                change((was) => ({ ...was, treatments: was.treatments.filter((_, t) => t !== treatment) }))
              }
            >
              Let it go
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
