import { lookImage } from '../state/look.js';

/** What the marks and colors on the table mean, in letters that are read, however small the block is shown. */
export function LookTold() {
  const told = lookImage.value?.told;
  if (!told) return null;
  return (
    <section class="look-told" aria-label="What is seen">
      {told.map(({ heading, entries }) => (
        <div key={heading}>
          <h3>{heading.replace('mm2', 'mm²')}</h3>
          <ul>
            {entries.map((entry) => (
              <li key={entry.told}>
                <img src={`data:image/svg+xml,${encodeURIComponent(entry.svg)}`} alt="" />
                {entry.told}
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
