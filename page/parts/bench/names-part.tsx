import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { nameFor } from '../../state/bench/fresh.js';
import { freeFileName } from '../../state/bench/library.js';
import { changeStitch, renameStitch } from '../../state/bench/on-bench.js';

/** What the stitch is called and what it is for. */
export function NamesPart({ name, record }: { name: string; record: StitchRecord }) {
  return (
    <section>
      <h2>Names</h2>
      <Line
        title="Title"
        value={record.title}
        onChange={(title) => renameStitch(title, (taken) => freeFileName(nameFor(taken)))}
      />
      <p class="hint">
        Its file is <code>{name}.json</code>.
      </p>
      <Line
        title="Other names"
        value={record.otherNames.join(', ')}
        onChange={(text) =>
          changeStitch((now) => ({ ...now, otherNames: text.split(',').flatMap((one) => one.trim() || []) }))
        }
      />
      <Line
        title="Family"
        value={record.family}
        onChange={(family) => changeStitch((now) => ({ ...now, family }))}
      />
      <Line
        title="What for"
        value={record.for}
        onChange={(use) => changeStitch((now) => ({ ...now, for: use }))}
      />
    </section>
  );
}

function Line({
  title,
  value,
  onChange,
}: {
  title: string;
  value: string;
  onChange: (text: string) => void;
}) {
  return (
    <label class="written">
      <span>{title}</span>
      <input
        type="text"
        maxLength={300}
        value={value}
        onChange={({ currentTarget }) => onChange(currentTarget.value)}
      />
    </label>
  );
}
