import type { Line } from '../core/messages.js';
import { change } from '../state/actions.js';
import { withoutWork, withPin, withSize, withThread, withWeight } from '../state/edits.js';
import { lineFacts } from '../state/line-facts.js';
import { lengthIn } from '../state/units.js';
import { repeatsOf } from '../state/words.js';
import { offers, work } from '../state/work.js';
import { Measure } from './measure.js';
import { MoreMeasures } from './more-measures.js';
import { Threads } from './threads.js';
import { Weight } from './weight.js';

/** The four measures that stand in front: size, spacing, weight and the hand. */
export function Measures({ line }: { line: Line }) {
  const facts = lineFacts(line);
  if (!facts) return <p class="hint">This line is bare. Choose a stitch for it below.</p>;
  const { treatment, first, measure } = facts;
  return (
    <section class="measures" aria-label="Measures">
      <p class="has">
        <strong>{titleOf(treatment.rows.map((row) => row.stitch))}</strong>
        {facts.repeats > 0 && <span>{repeatsOf(facts.repeats, lengthIn(facts.repeatMm))}</span>}
      </p>
      {(['width', 'repeat'] as const).map((name) => {
        const now = measure(name);
        if (!now) return null;
        return (
          <Measure
            key={name}
            title={name === 'width' ? 'Size' : 'Spacing'}
            value={now.value}
            min={now.about.min}
            max={now.about.max}
            step={0.1}
            show={lengthIn}
            onChange={(value) => change((was) => withSize(was, line, 0, name, value), `${name} ${line}`)}
          />
        );
      })}
      <Weight
        row={first}
        onWeigh={(weight) => change((was) => withWeight(was, line, weight), `weight ${line}`)}
      />
      <Measure
        title="By hand"
        value={work.value?.dressing.byHand ?? 0}
        min={0}
        max={1}
        step={0.05}
        show={(share) => (share === 0 ? 'even' : `${Math.round(100 * share)} %`)}
        onChange={(byHand) => change((was) => ({ ...was, byHand }), 'by hand')}
      />
      <Threads chosen={first.thread} onChoose={(thread) => change((was) => withThread(was, line, thread))} />
      <div class="row">
        <label class="check" title="It stays when the rest is mixed again">
          <input
            type="checkbox"
            checked={treatment.pinned ?? false}
            onChange={({ currentTarget }) => change((was) => withPin(was, line, currentTarget.checked))}
          />
          Pinned
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
