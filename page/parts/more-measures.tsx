import type { Treatment } from '../../src/formats/dressing.js';
import type { Line } from '../core/messages.js';
import { change } from '../state/actions.js';
import { withGuide, withSize, withTreatment } from '../state/edits.js';
import { lengthIn } from '../state/units.js';
import { offers } from '../state/work.js';
import { Choice } from './choice.js';
import { Measure } from './measure.js';

/** The rest of what a line can be told, one step behind. */
export function MoreMeasures({ line, treatment }: { line: Line; treatment: Treatment }) {
  const [first] = treatment.rows;
  const stitch = offers.value.find(({ name, shelf }) => shelf === 'stitch' && name === first.stitch);
  const others = (stitch?.parameters ?? []).filter(({ name }) => name !== 'width' && name !== 'repeat');
  const set = (part: Partial<Treatment>) =>
    change((was) => withTreatment(was, line, (one) => ({ ...one, ...part })));
  return (
    <details class="more">
      <summary>More about this seam</summary>
      {others.map(({ name, title, unit, min, max, default: usual }) => (
        <Measure
          key={name}
          title={title}
          value={first.parameters[name] ?? usual}
          min={min}
          max={max}
          step={unit === 'count' || unit === 'degree' ? 1 : 0.05}
          show={(value) =>
            unit === 'mm'
              ? lengthIn(value)
              : `${Math.round(value * 100) / 100}${unit === 'degree' ? '°' : ''}`
          }
          onChange={(value) => change((was) => withSize(was, line, 0, name, value), `${name} ${line}`)}
        />
      ))}
      <Choice
        title="Where it butts into another"
        value={treatment.ends ?? ''}
        options={[
          ['', 'as the block'],
          ['tuck', 'tucks under'],
          ['bevel', 'cut to its slant'],
          ['short', 'stops short of it'],
        ]}
        onChoose={(ends) => set({ ends: (ends || null) as Treatment['ends'] })}
      />
      <Choice
        title="Side"
        value={treatment.side ?? ''}
        options={[
          ['', 'the upper patch'],
          ['left', 'left'],
          ['right', 'right'],
        ]}
        onChoose={(side) => set({ side: (side || null) as Treatment['side'] })}
      />
      <Choice
        title="Grows"
        value={treatment.reverse ? 'back' : 'on'}
        options={[
          ['on', 'with the seam'],
          ['back', 'against it'],
        ]}
        onChoose={(way) => set({ reverse: way === 'back' })}
      />
      <Choice
        title="Guide line"
        value={treatment.guide?.shape ?? ''}
        options={[
          ['', 'the seam itself'],
          ['wave', 'waves'],
          ['scallop', 'scallops'],
          ['points', 'points'],
        ]}
        onChoose={(shape) => change((was) => withGuide(was, line, shape))}
      />
    </details>
  );
}
