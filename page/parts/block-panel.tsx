import { work } from '../state/work.js';
import { FiguresList } from './figures-list.js';
import { KeptList } from './kept-list.js';
import { LookHere } from './look-here.js';
import { RolesList } from './roles-list.js';
import { StopsList } from './stops-list.js';
import { UnitChoice } from './unit-choice.js';
import { Cloth } from './whole/cloth.js';
import { EdgesAndEnds } from './whole/edges-and-ends.js';
import { HoopAndSize } from './whole/hoop-and-size.js';
import { Hooping } from './whole/hooping.js';
import { Machine } from './whole/machine.js';
import { ThreadList } from './whole/thread-list.js';

/** The block as a whole: how large it is and how it is sewn, what is worth a look, what its file holds, what else is kept. */
export function BlockPanel() {
  return (
    <>
      <p class="hint">Touch a seam to choose its stitch, or go from seam to seam with the arrow keys.</p>
      {work.value?.roles && <RolesList roles={work.value.roles} />}
      <section>
        <h2>The block</h2>
        <HoopAndSize />
        <EdgesAndEnds />
        <ThreadList />
        <Cloth />
        <Hooping />
        <Machine />
      </section>
      <StopsList />
      <FiguresList />
      <LookHere />
      <KeptList />
      <UnitChoice />
    </>
  );
}
