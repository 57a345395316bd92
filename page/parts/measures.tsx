import { DEFAULT_PASSES } from '../../src/harmony/passes.js';
import type { Line } from '../core/messages.js';
import { change } from '../state/actions.js';
import { treatmentOf, withoutWork, withPin, withRow, withSize, withThread } from '../state/edits.js';
import { lengthIn } from '../state/units.js';
import { repeatsOf } from '../state/words.js';
import { offers, picture, work } from '../state/work.js';
import { Measure } from './measure.js';
import { MoreMeasures } from './more-measures.js';
import { Threads } from './threads.js';

/** The four measures that stand in front: size, spacing, weight and the hand. */
export function Measures({ line }: { line: Line }) {
  const dressing = work.value?.dressing;
  const treatment = dressing && treatmentOf(dressing, line);
  if (!treatment) return <p class="hint">This line is bare. Choose a stitch for it below.</p>;
  const [first] = treatment.rows;
  const stitch = offers.value.find(({ name, shelf }) => shelf === 'stitch' && name === first.stitch);
  const size = (name: string) => stitch?.parameters?.find((one) => one.name === name);
  const fit = picture.value?.report.fits.find(({ seam }) => seam === line);
  return (
    <section class="measures" aria-label="Measures">
      <p class="has">
        <strong>{titleOf(treatment.rows.map((row) => row.stitch))}</strong>
        {fit && fit.repeats > 0 && <span>{repeatsOf(fit.repeats, lengthIn(fit.repeatMm))}</span>}
      </p>
      {(['width', 'repeat'] as const).map((name) => {
        const about = size(name);
        if (!about) return null;
        return (
          <Measure
            key={name}
            title={name === 'width' ? 'Size' : 'Spacing'}
            value={first.parameters[name] ?? about.default}
            min={about.min}
            max={about.max}
            step={0.1}
            show={lengthIn}
            onChange={(value) => change((was) => withSize(was, line, 0, name, value), `${name} ${line}`)}
          />
        );
      })}
      <Measure
        title="Weight"
        value={first.passes ?? DEFAULT_PASSES}
        min={1}
        max={6}
        step={1}
        show={(passes) => `${passes} ${passes === 1 ? 'pass' : 'passes'}`}
        onChange={(passes) =>
          change((was) => withRow(was, line, 0, (row) => ({ ...row, passes })), `weight ${line}`)
        }
      />
      <Measure
        title="By hand"
        value={dressing.byHand ?? 0}
        min={0}
        max={1}
        step={0.05}
        show={(share) => (share === 0 ? 'even' : `${Math.round(100 * share)} %`)}
        onChange={(byHand) => change((was) => ({ ...was, byHand }), 'by hand')}
      />
      <Threads chosen={first.thread} onChoose={(thread) => change((was) => withThread(was, line, thread))} />
      <div class="row">
        <label class="check">
          <input
            type="checkbox"
            checked={treatment.pinned ?? false}
            onChange={({ currentTarget }) => change((was) => withPin(was, line, currentTarget.checked))}
          />
          Pinned: stays when the rest is mixed
        </label>
        <button type="button" class="quiet" onClick={() => change((was) => withoutWork(was, line))}>
          Leave it bare
        </button>
      </div>
      <MoreMeasures line={line} treatment={treatment} />
    </section>
  );
}

const titleOf = (names: readonly string[]): string =>
  [...new Set(names)]
    .map((name) => offers.value.find((one) => one.shelf === 'stitch' && one.name === name)?.title ?? name)
    .join(' with ');
