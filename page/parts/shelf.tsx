import { useState } from 'preact/hooks';
import type { Line } from '../core/messages.js';
import { familiesOf, found } from '../state/find-offers.js';
import { offers } from '../state/work.js';
import { OfferCard } from './offer-card.js';

/** All that the line could have, drawn on the line itself, by family; found by any name that a stitch goes by. */
export function Shelf({ line }: { line: Line }) {
  const [wanted, setWanted] = useState('');
  const families = familiesOf(found(offers.value, wanted));
  return (
    <section class="shelf" aria-label="Stitches to choose from">
      <label class="search">
        <span class="unseen">Search stitches by any name</span>
        <input
          type="search"
          placeholder="Search by any name: catch stitch, brier …"
          value={wanted}
          onInput={({ currentTarget }) => setWanted(currentTarget.value)}
        />
      </label>
      {families.length === 0 && <p class="hint">No stitch goes by that name.</p>}
      {families.map(({ family, offers: of }) => (
        <section key={family}>
          <h3>{family}</h3>
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
