import type { CornerManner, Dressing, Manner } from '../../src/formats/dressing.js';

/** How manners are told to the maker. */
export const ENDS: Readonly<Record<Manner, string>> = {
  tuck: 'tucks under',
  bevel: 'cut to its slant',
  short: 'stops short of it',
};

export const CORNERS: Readonly<Record<CornerManner, string>> = {
  turn: 'turns into it',
  round: 'goes round it',
  break: 'breaks off',
};

export const OUTLINES: Readonly<Record<Dressing['outline'], string>> = {
  trim: 'trimmed in the hoop',
  join: 'joined into other work',
  free: 'left free',
};

/** Clear cloth between treatments at a junction, mm: the page's own, a dressing takes more. */
export const GAPS = { min: 0, max: 3, step: 0.1 };
