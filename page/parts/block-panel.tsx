import { work } from '../state/work.js';
import { FiguresList } from './figures-list.js';
import { KeptList } from './kept-list.js';
import { LookHere } from './look-here.js';
import { RolesList } from './roles-list.js';
import { StopsList } from './stops-list.js';
import { UnitChoice } from './unit-choice.js';

/** The block as a whole: how it is sewn, what is worth a look, what its file holds, what else is kept. */
export function BlockPanel() {
  return (
    <>
      <p class="hint">Touch a seam to choose its stitch, or go from seam to seam with the arrow keys.</p>
      {work.value?.roles && <RolesList roles={work.value.roles} />}
      <StopsList />
      <FiguresList />
      <LookHere />
      <KeptList />
      <UnitChoice />
    </>
  );
}
