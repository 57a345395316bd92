import type { Cloth as Kind } from '../../../src/check/density/limits.js';
import { limitsAsked } from '../../../src/density-limits.js';
import { change } from '../../state/actions.js';
import { withCloth } from '../../state/block-edits.js';
import { work } from '../../state/work.js';
import { Choice } from '../choice.js';
import { Fold } from '../fold.js';

const KINDS: readonly (readonly [Kind, string])[] = [
  ['firm', 'firm cotton, velvet'],
  ['fine', 'fine cotton, silk, satin'],
];

/** What the cloth bears: from where on density is worth a look. */
export function Cloth() {
  const dressing = work.value?.dressing;
  if (!dressing) return null;
  const { cloth = 'firm' } = dressing.density ?? {};
  const { holes, layers, inOneHole } = limitsAsked(dressing.density);
  return (
    <Fold title="Cloth" now={KINDS.find(([kind]) => kind === cloth)![1]}>
      <Choice
        title="It is"
        value={cloth}
        options={KINDS}
        onChoose={(kind) => change((was) => withCloth(was, kind as Kind))}
      />
      <p class="aside">
        Worth a look from {holes.warning} holes in a square millimeter, {layers.warning} threads one over
        another, and {inOneHole.warning} times through one hole.
      </p>
    </Fold>
  );
}
