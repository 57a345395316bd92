import type { Finding } from '../../src/finding.js';
import { findings } from '../state/look.js';
import { onScreen } from '../state/on-screen.js';
import { lengthsIn } from '../state/units.js';
import { lookAt } from '../state/view.js';
import { picture, touched } from '../state/work.js';

const SIGNS = { error: '✕ wrong', warning: '! look', note: '· note' } as const;

/** What is worth a look, the worst first; each leads to its place. */
export function LookHere() {
  if (findings.value.length === 0) return null;
  return (
    <section>
      <h2>Look here</h2>
      <ul class="findings">
        {findings.value.map((finding) => (
          <li key={`${finding.code} ${finding.message}`}>
            <button type="button" class={finding.level} onClick={() => goTo(finding)}>
              <span class="sign">{SIGNS[finding.level]}</span>
              <span>{lengthsIn(onScreen(finding.message))}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Its place comes to the middle, and its line is touched: the one it names, or the only one that its stop sews. */
function goTo({ at, seam, stop }: Finding): void {
  if (at) lookAt(at);
  const sewn = stop === undefined ? [] : (picture.value?.report.stops[stop - 1]?.seams ?? []);
  const line = seam ?? (sewn.length === 1 ? sewn[0] : undefined);
  if (line !== undefined) touched.value = line;
}
