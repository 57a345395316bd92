import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { freeFileName } from '../../state/bench/drafts.js';
import { nameFor } from '../../state/bench/fresh.js';
import { changeStitch, renameStitch } from '../../state/bench/on-bench.js';
import { LinesField, WrittenField } from './written-field.js';

/** What the stitch is called, what it is for, and where it comes from. */
export function NamesPart({ name, record }: { name: string; record: StitchRecord }) {
  const write = (part: Partial<StitchRecord>) => changeStitch((now) => ({ ...now, ...part }));
  return (
    <section>
      <h2>Names</h2>
      <WrittenField
        title="Title"
        value={record.title}
        onChange={(title) => renameStitch(title, (taken) => freeFileName(nameFor(taken)))}
      />
      <p class="hint">
        Its file is <code>{name}.json</code>.
      </p>
      <WrittenField
        title="Other names"
        value={record.otherNames.join(', ')}
        onChange={(text) => write({ otherNames: text.split(',').flatMap((one) => one.trim() || []) })}
      />
      <WrittenField
        title="Family"
        value={record.family}
        onChange={(family) => family.trim() && write({ family: family.trim() })}
      />
      <WrittenField
        title="What for"
        value={record.for}
        onChange={(use) => use.trim() && write({ for: use.trim() })}
      />
      <LinesField title="Learned from" lines={record.sources} onChange={(sources) => write({ sources })} />
    </section>
  );
}
