import { useState } from 'preact/hooks';
import type { OwnStitch } from '../../core/bench-messages.js';
import { drafts, goOnWithDraft, throwAway } from '../../state/bench/drafts.js';
import { forgetOwn, handOut, layCopy, layFresh, layOwn, takeInStitches } from '../../state/bench/library.js';
import { draft, ownStitches } from '../../state/bench/on-bench.js';
import { found } from '../../state/find-offers.js';
import { givenFiles } from '../../state/given-files.js';
import { offers } from '../../state/work.js';
import { FileButton } from '../file-button.js';
import { Search } from '../search.js';

/** What to work on: nothing yet, a copy, or a stitch of one's own; and files to take in. */
export function Start({ onChosen = () => {} }: { onChosen?: () => void }) {
  const [wanted, setWanted] = useState('');
  const stitches = offers.value.filter(({ shelf }) => shelf === 'stitch');
  const open = drafts.value.filter(({ id }) => id !== draft.value?.id);
  const titleOf = ({ name }: OwnStitch) => stitches.find((one) => one.name === name)?.title ?? name;
  return (
    <div class="start">
      <div class="row">
        <button
          type="button"
          class="main"
          onClick={() => {
            layFresh();
            onChosen();
          }}
        >
          From nothing
        </button>
        <FileButton
          title="Take in stitch files"
          accept=".json"
          onFiles={async (files) => takeInStitches(await givenFiles(files))}
        />
      </div>
      {open.length > 0 && <h3>Not finished</h3>}
      <ul class="own">
        {open.map((one) => (
          <li key={one.id}>
            <button
              type="button"
              class="what"
              onClick={async () => {
                await goOnWithDraft(one);
                onChosen();
              }}
            >
              {one.record.title}{' '}
              <span class="aside">
                {one.name}.json, {new Date(one.changedAt).toLocaleString()}
              </span>
            </button>
            <button type="button" class="quiet" onClick={() => void throwAway(one)}>
              Throw away<span class="unseen"> {one.record.title}</span>
            </button>
          </li>
        ))}
      </ul>
      {ownStitches.value.length > 0 && <h3>My own stitches</h3>}
      <ul class="own">
        {ownStitches.value.map((stitch) => (
          <li key={stitch.name}>
            <button
              type="button"
              class="what"
              onClick={() => {
                layOwn(stitch);
                onChosen();
              }}
            >
              {titleOf(stitch)} <span class="aside">{stitch.name}.json</span>
            </button>
            <button type="button" class="quiet" onClick={() => handOut(stitch)}>
              File<span class="unseen"> of {stitch.name}</span>
            </button>
            <button type="button" class="quiet" onClick={() => void forgetOwn(stitch.name)}>
              Forget<span class="unseen"> {stitch.name}</span>
            </button>
          </li>
        ))}
      </ul>
      <h3>A copy of</h3>
      <Search
        title="Search stitches to copy"
        hint="any stitch, by any name"
        wanted={wanted}
        onChange={setWanted}
      />
      <ul class="copies">
        {found(stitches, wanted).map(({ name, title }) => (
          <li key={name}>
            <button
              type="button"
              onClick={async () => {
                await layCopy(name, title);
                onChosen();
              }}
            >
              {title}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
