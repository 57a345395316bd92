import { useState } from 'preact/hooks';
import { fitIn, HOOPS } from '../../../src/check/hoops.js';
import { change } from '../../state/actions.js';
import { withHoop, withScale, withTurn } from '../../state/block-edits.js';
import { fieldIn } from '../../state/units.js';
import { picture, work } from '../../state/work.js';
import { Choice } from '../choice.js';
import { LengthField } from '../drawing/length-field.js';
import { Fold } from '../fold.js';
import { Measure } from '../measure.js';
import { Tick } from '../tick.js';

const keyOf = ({ width, height }: { width: number; height: number }) => `${width}x${height}`;
/** Sewing fields with a long side, both ways: as high, and as wide. */
const FIELDS = HOOPS.flatMap((hoop) =>
  hoop.width === hoop.height ? [hoop] : [hoop, { width: hoop.height, height: hoop.width }],
);

/** The sewing field, how large the block is, and how it lies. */
export function HoopAndSize() {
  const [isOwn, makeOwn] = useState(false);
  const dressing = work.value?.dressing;
  const totals = picture.value?.report.totals;
  if (!dressing) return null;
  const { hoop, block } = dressing;
  const { scale = 1, turn = 0 } = block;
  const isListed = hoop !== null && FIELDS.some((one) => keyOf(one) === keyOf(hoop));
  const shown = hoop === null ? '' : isListed && !isOwn ? keyOf(hoop) : 'own';
  return (
    <Fold title="Hoop and size" now={hoop ? fieldIn(hoop) : 'no hoop named'}>
      <Choice
        title="Sewing field"
        value={shown}
        options={[
          ['', 'not named'],
          ...FIELDS.map((one) => [keyOf(one), fieldIn(one)] as const),
          ['own', 'your own size'],
        ]}
        onChoose={(key) => {
          makeOwn(key === 'own');
          if (key === 'own') change((was) => withHoop(was, hoop ?? HOOPS[0]));
          else change((was) => withHoop(was, FIELDS.find((one) => keyOf(one) === key) ?? null));
        }}
      />
      {hoop && shown === 'own' && (
        <div class="fields">
          <LengthField
            title="Across"
            value={hoop.width}
            least={1}
            most={10_000}
            onChange={(width) => change((was) => withHoop(was, { ...hoop, width }))}
          />
          <LengthField
            title="Down"
            value={hoop.height}
            least={1}
            most={10_000}
            onChange={(height) => change((was) => withHoop(was, { ...hoop, height }))}
          />
        </div>
      )}
      {hoop && hoop.width !== hoop.height && (
        <button
          type="button"
          onClick={() => change((was) => withHoop(was, { width: hoop.height, height: hoop.width }))}
        >
          Turn the hoop
        </button>
      )}
      {totals && (
        <p class="aside">
          The work takes {fieldIn({ width: totals.widthMm, height: totals.heightMm })}
          {hoop ? `: ${liesIn(hoop, { width: totals.widthMm, height: totals.heightMm })}` : ''}.
        </p>
      )}
      <Tick
        title="As large as the hoop takes"
        value={scale === 'hoop'}
        isOpen={hoop !== null}
        onChange={(isToHoop) => change((was) => withScale(was, isToHoop ? 'hoop' : 1))}
      />
      {scale !== 'hoop' && (
        <Measure
          title="Size of the block"
          value={Math.round(100 * scale)}
          min={25}
          max={400}
          step={1}
          show={(percent) => `${percent} %`}
          onChange={(percent) => change((was) => withScale(was, percent / 100), 'scale')}
        />
      )}
      <Measure
        title="Turned"
        value={turn}
        min={-180}
        max={180}
        step={1}
        show={(degrees) => `${degrees}°`}
        onChange={(degrees) => change((was) => withTurn(was, degrees), 'turn')}
      />
      <div class="row wrap">
        <button type="button" onClick={() => change((was) => withTurn(was, turn + 90))}>
          A quarter to the left
        </button>
        <button type="button" onClick={() => change((was) => withTurn(was, turn - 90))}>
          To the right
        </button>
      </div>
      <p class="aside">Stitches keep their size: there are more or fewer of them.</p>
    </Fold>
  );
}

function liesIn(hoop: { width: number; height: number }, sewn: { width: number; height: number }): string {
  const { fits, turned } = fitIn(hoop, sewn);
  if (!fits) return 'too much for this hoop';
  return turned ? 'it fits turned by a quarter' : 'it fits';
}
