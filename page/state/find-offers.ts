import type { Offered } from '../core/messages.js';

/** Letters alone count: "Briar-stitch" is found by "briar st". */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();

/** Offers of which a name, or what it is for, has all that was typed in it; names that begin so come first. */
export function found(offers: readonly Offered[], typed: string): readonly Offered[] {
  const wanted = plain(typed);
  if (wanted === '') return offers;
  const ranked = offers.flatMap((offer) => {
    const names = [offer.title, offer.name, ...offer.otherNames].map(plain);
    if (names.some((name) => name.startsWith(wanted))) return [{ offer, rank: 0 }];
    if (names.some((name) => name.includes(wanted))) return [{ offer, rank: 1 }];
    return plain(`${offer.family} ${offer.use}`).includes(wanted) ? [{ offer, rank: 2 }] : [];
  });
  return ranked.sort((a, b) => a.rank - b.rank).map(({ offer }) => offer);
}

/** A maker's own first, then family by family in the order in which they are found. */
export function familiesOf(
  offers: readonly Offered[],
): { readonly family: string; readonly offers: readonly Offered[] }[] {
  const families = new Map<string, Offered[]>();
  for (const offer of [...offers].sort((a, b) => Number(b.isOwn) - Number(a.isOwn))) {
    const family = offer.isOwn
      ? 'my own'
      : offer.shelf === 'treatment'
        ? 'rows and accents together'
        : offer.family;
    families.set(family, [...(families.get(family) ?? []), offer]);
  }
  return [...families].map(([family, of]) => ({ family, offers: of }));
}
