import { minutes } from '../state/words.js';
import { picture } from '../state/work.js';

/** The color stops in the order of sewing. */
export function StopsList() {
  const stops = picture.value?.report.stops ?? [];
  return (
    <section>
      <h2>Order of sewing</h2>
      <ol class="stops">
        {stops.map(({ stop, title, kind, thread, minutes: takes }) => (
          <li key={stop} class={kind === 'existing' ? 'locked' : ''}>
            <span class="spool" style={{ background: thread?.hex ?? 'transparent' }} />
            <span class="what">{title}</span>
            <span class="aside">{kind === 'existing' ? 'locked' : minutes(takes)}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}
