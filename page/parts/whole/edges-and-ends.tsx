import type { Dressing, Manner } from '../../../src/formats/dressing.js';
import { MOST_PULL } from '../../../src/formats/dressing.js';
import { change } from '../../state/actions.js';
import { treatmentOf } from '../../state/edits.js';
import { stitchOf } from '../../state/line-facts.js';
import { ENDS, GAPS, OUTLINES } from '../../state/manners.js';
import { rereadAs } from '../../state/meeting-edits.js';
import { lengthIn } from '../../state/units.js';
import { picture, touched, work } from '../../state/work.js';
import { Choice } from '../choice.js';
import { Fold } from '../fold.js';
import { Measure } from '../measure.js';

/** What becomes of the edge, and how seams end. */
export function EdgesAndEnds() {
  const dressing = work.value?.dressing;
  if (!dressing) return null;
  const edge = treatmentOf(dressing, 'outline');
  const isBounded = picture.value?.block.outline !== null;
  const edgeTitle = edge ? (stitchOf(edge.rows[0].stitch)?.title ?? edge.rows[0].stitch) : 'bare';
  return (
    <Fold title="Edge and ends" now={OUTLINES[dressing.outline]}>
      {isBounded && (
        <div class="row">
          <span>Stitch of the edge: {edgeTitle.toLowerCase()}</span>
          <button
            type="button"
            onClick={() => {
              touched.value = 'outline';
            }}
          >
            {edge ? 'Change it' : 'Choose one'}
          </button>
        </div>
      )}
      <Choice
        title="The edge is"
        value={dressing.outline}
        options={Object.entries(OUTLINES)}
        onChoose={(outline) => change((was) => ({ ...was, outline: outline as Dressing['outline'] }))}
      />
      <Choice
        title="A seam that butts in"
        value={dressing.ends}
        options={Object.entries(ENDS)}
        onChoose={(ends) => change((was) => ({ ...was, ends: ends as Manner }))}
      />
      <Measure
        title="Clear cloth between"
        value={dressing.gap}
        {...GAPS}
        show={lengthIn}
        onChange={(gap) => change((was) => ({ ...was, gap }), 'gap')}
      />
      <Measure
        title="Satin wider by"
        value={dressing.pull ?? 0}
        min={0}
        max={MOST_PULL}
        step={0.05}
        show={(mm) => (mm === 0 ? 'nothing' : lengthIn(mm))}
        onChange={(pull) => change((was) => ({ ...was, pull }), 'pull')}
      />
      <Measure
        title="Ends meet within"
        value={dressing.block.snap}
        min={0}
        max={5}
        step={0.1}
        show={lengthIn}
        onChange={(snap) => void rereadAs('Reading the block anew', (source) => ({ ...source, snap }))}
      />
    </Fold>
  );
}
