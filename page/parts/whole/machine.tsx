import { COMMON_PACE } from '../../../src/design/pace.js';
import type { Machine as MachineRecord } from '../../../src/formats/dressing.js';
import { change } from '../../state/actions.js';
import { withMachine } from '../../state/block-edits.js';
import { work } from '../../state/work.js';
import { Fold } from '../fold.js';
import { Measure } from '../measure.js';

interface Told {
  readonly key: keyof MachineRecord & keyof typeof COMMON_PACE;
  readonly title: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly unit: string;
}

const MEASURES: readonly Told[] = [
  { key: 'needles', title: 'Needles', min: 1, max: 20, step: 1, unit: '' },
  { key: 'stitchesPerMinute', title: 'Stitches a minute', min: 50, max: 1500, step: 50, unit: '' },
  { key: 'heavyStitchesPerMinute', title: 'In heavy thread', min: 50, max: 1500, step: 50, unit: '' },
  { key: 'trimSeconds', title: 'To trim', min: 0, max: 30, step: 1, unit: ' s' },
  { key: 'changeMinutes', title: 'To change thread', min: 0, max: 10, step: 0.5, unit: ' min' },
];

/** What minutes are reckoned by. */
export function Machine() {
  const dressing = work.value?.dressing;
  if (!dressing) return null;
  const pace = { ...COMMON_PACE, ...dressing.machine };
  return (
    <Fold title="Machine" now={pace.needles === 1 ? 'one needle' : `${pace.needles} needles`}>
      {MEASURES.map(({ key, title, min, max, step, unit }) => (
        <Measure
          key={key}
          title={title}
          value={pace[key]}
          {...{ min, max, step }}
          show={(value) => `${value}${unit}`}
          onChange={(value) => change((was) => withMachine(was, { [key]: value }), `machine ${key}`)}
        />
      ))}
    </Fold>
  );
}
