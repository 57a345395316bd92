import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { changeStitch } from '../../state/bench/on-bench.js';
import { Choice } from '../choice.js';
import { NumberField } from './number-field.js';

const SYMMETRIES = [
  ['none', 'every repeat alike'],
  ['glide', 'left and right in turn'],
  ['mirror', 'alike to both hands'],
] as const;
const CORNERS = [
  ['turn', 'turns it'],
  ['round', 'goes round it'],
  ['break', 'breaks off and starts anew'],
] as const;
const GROWTHS = [
  ['on', 'goes on the same way'],
  ['mirror', 'grows from the corner both ways'],
] as const;

/** How the stitch repeats, turns and ends. */
export function MannerPart({ record }: { record: StitchRecord }) {
  const { symmetry, corner, growth, halves, detached = false, smallest } = record;
  const set = (part: Partial<StitchRecord>) => changeStitch((now) => ({ ...now, ...part }));
  const choice = <K extends 'symmetry' | 'corner' | 'growth'>(
    title: string,
    key: K,
    value: StitchRecord[K],
    options: readonly (readonly [StitchRecord[K], string])[],
  ) => (
    <Choice
      title={title}
      value={value}
      options={options}
      onChoose={(chosen) => set({ [key]: chosen } as Partial<StitchRecord>)}
    />
  );
  return (
    <section>
      <h2>How it is worked</h2>
      {choice('Symmetry', 'symmetry', symmetry, SYMMETRIES)}
      {choice('At a corner', 'corner', corner, CORNERS)}
      {choice('Behind it', 'growth', growth, GROWTHS)}
      <label class="check">
        <input
          type="checkbox"
          checked={halves}
          onChange={({ currentTarget }) => set({ halves: currentTarget.checked })}
        />
        may end after half a repeat
      </label>
      <label class="check">
        <input
          type="checkbox"
          checked={detached}
          onChange={({ currentTarget }) =>
            changeStitch(({ detached: _, ...rest }) =>
              currentTarget.checked ? { ...rest, detached: true } : rest,
            )
          }
        />
        repeats stand apart
      </label>
      <p class="hint">Smallest good size, in thread No. 40:</p>
      <div class="fields">
        <NumberField
          title="repeat"
          value={smallest.repeat}
          onChange={(repeat) => set({ smallest: { ...smallest, repeat } })}
        />
        <NumberField
          title="width"
          value={smallest.width}
          onChange={(width) => set({ smallest: { ...smallest, width } })}
        />
      </div>
    </section>
  );
}
