import type { Laid as LaidRecord, Treatment } from '../../../src/formats/dressing.js';
import type { Line } from '../../core/messages.js';
import { change } from '../../state/actions.js';
import { withLaid } from '../../state/block-edits.js';
import { lengthIn } from '../../state/units.js';
import { Fold } from '../fold.js';
import { Measure } from '../measure.js';
import { Spools } from '../spools.js';
import { Tick } from '../tick.js';
import { useTyped } from '../typed.js';

/** A narrow ribbon, as it is sold: common practice. */
const RIBBON = { name: 'satin ribbon', width: 6, hex: '#b78a94' };
const WIDTHS = { min: 1, max: 30 };

/** Ribbon, braid or lace that lies beneath the rows. */
export function Laid({ line, treatment }: { line: Line; treatment: Treatment }) {
  const { laid = null, rows } = treatment;
  const lay = (one: LaidRecord | null, grip: string | null = null) =>
    change((was) => withLaid(was, line, one), grip);
  const naming = useTyped(laid?.name ?? '', (text) => {
    const name = text.trim();
    if (name && laid) lay({ ...laid, name });
  });
  return (
    <Fold title="Laid beneath" now={laid?.name ?? 'nothing'}>
      <Tick
        title="Ribbon, braid or lace, held by the rows"
        value={laid !== null}
        onChange={(isLaid) => lay(isLaid ? { ...RIBBON, thread: rows[0].thread } : null)}
      />
      {laid && (
        <>
          <label class="choice">
            <span>What it is</span>
            <input type="text" {...naming} />
          </label>
          <Measure
            title="Width"
            value={laid.width}
            {...WIDTHS}
            step={0.5}
            show={lengthIn}
            onChange={(width) => lay({ ...laid, width }, `laid ${line}`)}
          />
          <label class="choice">
            <span>Color</span>
            <input
              type="color"
              class="swatch"
              value={laid.hex}
              onInput={({ currentTarget }) =>
                lay({ ...laid, hex: currentTarget.value }, `laid color ${line}`)
              }
            />
          </label>
          <Spools title="Line" chosen={laid.thread} onChoose={(thread) => lay({ ...laid, thread })} />
        </>
      )}
    </Fold>
  );
}
