import type { Missing } from '../../core/messages.js';
import { change } from '../../state/actions.js';
import { bare } from '../../state/drawing/board.js';
import { lengthIn } from '../../state/units.js';
import { lookAt } from '../../state/view.js';
import { lineTitle } from '../../state/words.js';
import { offers, told } from '../../state/work.js';

/** A treatment that misses its seam by less than this lies on the line, but not on the same stretch of it, mm. */
const ON_IT = 0.5;

/** Treatments that would not lie on a seam any more, by name, and what can be done with each. */
export function MissingList() {
  const missing = bare.value?.missing ?? [];
  if (missing.length === 0) return null;
  return (
    <section class="missing" aria-live="polite">
      <h2>Would miss their seam</h2>
      <ul>
        {missing.map((one) => (
          <li key={one.treatment}>
            <p>
              <strong>✕ {titlesOf(one)}</strong>: its seam is not where it was; {whyOf(one)}.
            </p>
            <div class="row wrap">
              {one.nearest?.isBare && (
                <button type="button" onClick={() => layOnNearest(one)}>
                  Lay it on {lineTitle(one.nearest.seam.id).toLowerCase()}
                </button>
              )}
              {one.at && (
                <button type="button" onClick={() => lookAt(one.at!)}>
                  Show where
                </button>
              )}
              <button type="button" class="quiet" onClick={() => letGo(one)}>
                Let it go
              </button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

const titlesOf = ({ stitches }: Missing): string =>
  stitches
    .map((name) => offers.value.find((one) => one.shelf === 'stitch' && one.name === name)?.title ?? name)
    .join(' with ');

function whyOf({ nearest }: Missing): string {
  if (!nearest) return 'there is no seam';
  const title = lineTitle(nearest.seam.id).toLowerCase();
  return nearest.off < ON_IT
    ? `${title} lies there now, and begins or ends elsewhere`
    : `the nearest, ${title}, is ${lengthIn(nearest.off)} off`;
}

function layOnNearest({ treatment, nearest }: Missing): void {
  const { seam } = nearest!;
  change((was) => ({
    ...was,
    treatments: was.treatments.map((one, t) => (t === treatment ? { ...one, seam } : one)),
  }));
  told.value = `It lies on ${lineTitle(seam.id)}`;
}

function letGo({ treatment }: Missing): void {
  change((was) => ({ ...was, treatments: was.treatments.filter((_, t) => t !== treatment) }));
  told.value = 'It is gone; undo brings it back';
}
