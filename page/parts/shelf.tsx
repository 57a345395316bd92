import { useState } from 'preact/hooks';
import type { Line } from '../core/messages.js';
import { familiesOf, found } from '../state/find-offers.js';
import { offers } from '../state/work.js';
import { OfferCard } from './offer-card.js';
import { Search } from './search.js';

/** All that the line could have, drawn on the line itself, by family; found by any name that a stitch goes by. */
export function Shelf({ line }: { line: Line }) {
  const [wanted, setWanted] = useState('');
  const [family, setFamily] = useState<string | null>(null);
  const all = familiesOf(found(offers.value, wanted));
  const families = family === null || wanted ? all : all.filter((one) => one.family === family);
  return (
    <section class="shelf" aria-label="Stitches to choose from">
      <Search
        title="Search stitches by any name"
        hint="by any name: catch stitch, brier …"
        wanted={wanted}
        onChange={setWanted}
      />
      {!wanted && (
        <div class="families">
          {[null, ...all.map((one) => one.family)].map((one) => (
            <button key={one} type="button" aria-pressed={family === one} onClick={() => setFamily(one)}>
              {one ?? 'all'}
            </button>
          ))}
        </div>
      )}
      {families.length === 0 && <p class="hint">No stitch goes by that name.</p>}
      {families.map(({ family: name, offers: of }) => (
        <section key={name}>
          <h3>{name}</h3>
          <div class="cards">
            {of.map((offer) => (
              <OfferCard key={`${offer.shelf} ${offer.name}`} line={line} offer={offer} />
            ))}
          </div>
        </section>
      ))}
    </section>
  );
}
