import { benched, benchFound } from '../../state/bench/on-bench.js';
import { lengthsIn } from '../../state/units.js';

/** What is wrong with the stitch or worth a look, at once for its file, after a rest for how it sews at all its sizes. */
export function FoundPart() {
  const wrong = benched.value?.wrong ?? [];
  const found = benchFound.value;
  return (
    <section aria-live="polite">
      <h2>Look here</h2>
      {found === null && wrong.length === 0 && <p class="hint">Sewing it at all its sizes …</p>}
      {found?.length === 0 && <p class="hint">Nothing: it sews well at all its sizes.</p>}
      <ul class="findings bench-found">
        {(found ?? wrong.map((one) => ({ ...one, level: 'wrong' as const, at: null }))).map((one, k) => (
          <li key={k} class={one.level === 'wrong' ? 'error' : 'note'}>
            <strong>{one.level === 'wrong' ? 'Wrong' : 'Note'}</strong>{' '}
            {one.where.replace(/^This stitch ?/, '')} {lengthsIn(one.wrong)}
            {one.at && <span class="aside"> (at {one.at})</span>}. What would help: {lengthsIn(one.right)}.
          </li>
        ))}
      </ul>
    </section>
  );
}
