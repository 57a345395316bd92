import { change } from '../../state/actions.js';
import { withHooping } from '../../state/block-edits.js';
import { lengthIn } from '../../state/units.js';
import { plural } from '../../state/words.js';
import { work } from '../../state/work.js';
import { Fold } from '../fold.js';
import { Measure } from '../measure.js';
import { Tick } from '../tick.js';

/** A basting box lies so far outside the block, mm. Common practice: 8 to 10. */
const USUAL_BASTING = 9;

/** What is sewn first, to hoop a block that is finished. */
export function Hooping() {
  const dressing = work.value?.dressing;
  if (!dressing) return null;
  const { outline = false, basting, align = [], crosses = false } = dressing.hooping ?? {};
  const said = [outline && 'its outline', basting !== undefined && 'a basting box'].filter(Boolean);
  return (
    <Fold title="Hooping" now={said.join(', ') || 'nothing first'}>
      <Tick
        title="First its outline on the stabilizer"
        value={outline}
        onChange={(isSewn) => change((was) => withHooping(was, { outline: isSewn || undefined }))}
      />
      <Tick
        title="Then a box of long stitches round it"
        value={basting !== undefined}
        onChange={(isSewn) =>
          change((was) => withHooping(was, { basting: isSewn ? USUAL_BASTING : undefined }))
        }
      />
      {basting !== undefined && (
        <Measure
          title="So far outside"
          value={basting}
          min={1}
          max={50}
          step={0.5}
          show={lengthIn}
          onChange={(mm) => change((was) => withHooping(was, { basting: mm }), 'basting')}
        />
      )}
      <p class="aside">
        {align.length === 0
          ? 'The needle can show single places first: say so where a seam meets others.'
          : `The needle shows ${plural(align.length, 'place')} first.`}
      </p>
      {align.length > 0 && (
        <Tick
          title="With crosses, to be pulled out"
          value={crosses}
          onChange={(isSewn) => change((was) => withHooping(was, { crosses: isSewn || undefined }))}
        />
      )}
    </Fold>
  );
}
