import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { renamed } from '../../state/bench/names.js';
import { changeStitch, releaseStitch } from '../../state/bench/on-bench.js';
import {
  isNeeded,
  parameterAdded,
  parameterChanged,
  parameterRemoved,
} from '../../state/bench/parameters.js';
import { lengthIn, unit as measured } from '../../state/units.js';
import { Choice } from '../choice.js';
import { NewName } from './new-name.js';
import { NumberField } from './number-field.js';
import { WrittenField } from './written-field.js';

const UNITS = [
  ['mm', 'millimeters'],
  ['share', 'share'],
  ['degree', 'degrees'],
  ['count', 'how many'],
] as const;

/** What of the stitch can be asked for in other sizes: its usual size, and from where to where. */
export function SizesPart({ record }: { record: StitchRecord }) {
  return (
    <section>
      <h2>Sizes</h2>
      {Object.entries(record.parameters).map(([name, { title, unit, min, max, ...rest }]) => {
        const change = (part: Parameters<typeof parameterChanged>[2], grip: string | null = null) =>
          changeStitch((now) => parameterChanged(now, name, part), grip);
        return (
          <fieldset key={name} class="size">
            <legend>
              {title} <code>{name}</code>
            </legend>
            <label class="measure">
              <span class="name">usual</span>
              <input
                type="range"
                min={min}
                max={max}
                step={unit === 'count' ? 1 : unit === 'share' ? 0.01 : 0.1}
                value={rest.default}
                onInput={({ currentTarget }) =>
                  change({ default: Number(currentTarget.value) }, `usual ${name}`)
                }
                onChange={releaseStitch}
              />
              <output>
                {unit === 'mm' ? lengthIn(rest.default) : `${rest.default}${unit === 'degree' ? '°' : ''}`}
              </output>
            </label>
            <details class="more">
              <summary>
                from {min} to {max}
              </summary>
              <WrittenField
                title="Title"
                value={title}
                onChange={(text) => text.trim() && change({ title: text.trim() })}
              />
              {!isNeeded(name) && (
                <WrittenField
                  title="Called"
                  value={name}
                  onChange={(to) => changeStitch((now) => renamed(now, 'quantity', name, to))}
                />
              )}
              <div class="fields">
                <NumberField title="from" value={min} onChange={(value) => change({ min: value })} />
                <NumberField title="to" value={max} onChange={(value) => change({ max: value })} />
                <NumberField
                  title="usual"
                  value={rest.default}
                  onChange={(value) => change({ default: value })}
                />
                <Choice
                  title="Unit"
                  value={unit}
                  options={UNITS}
                  onChoose={(value) => change({ unit: value as typeof unit })}
                />
              </div>
              {!isNeeded(name) && (
                <button
                  type="button"
                  class="quiet"
                  onClick={() => changeStitch((now) => parameterRemoved(now, name))}
                >
                  Take it out
                </button>
              )}
            </details>
          </fieldset>
        );
      })}
      <NewName
        title="another size"
        hint="another, such as Lean"
        onAdd={(title) => changeStitch((now) => parameterAdded(now, title))}
      />
      <p class="hint">
        Points use a size by the name behind its title, in what is written along or across.
        {measured.value === 'inch' && ' What is written is in millimeters, as in the file of a stitch.'}
      </p>
    </section>
  );
}
