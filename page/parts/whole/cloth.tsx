import type { Cloth as Kind } from '../../../src/check/density/limits.js';
import { LIMITS } from '../../../src/check/density/limits.js';
import { become } from '../../state/actions.js';
import { work } from '../../state/work.js';
import { Choice } from '../choice.js';
import { Fold } from '../fold.js';

const KINDS: readonly (readonly [Kind, string])[] = [
  ['firm', 'firm cotton, velvet'],
  ['fine', 'fine cotton, silk, satin'],
];

/** What the cloth bears: from where on density is worth a look. */
export function Cloth() {
  const now = work.value;
  if (!now) return null;
  const cloth = now.cloth ?? 'firm';
  const { holes, layers, inOneHole } = LIMITS[cloth];
  return (
    <Fold title="Cloth" now={KINDS.find(([kind]) => kind === cloth)![1]}>
      <Choice
        title="It is"
        value={cloth}
        options={KINDS}
        onChoose={(kind) => become({ ...now, cloth: kind as Kind })}
      />
      <p class="aside">
        Worth a look from {holes.warning} holes in a square millimeter, {layers.warning} threads one over
        another, and {inOneHole.warning} times through one hole.
      </p>
    </Fold>
  );
}
