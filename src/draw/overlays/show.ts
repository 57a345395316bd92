/** What a picture can show. */
export const SHOWN = [
  'thread',
  'density',
  'layers',
  'stops',
  'holes',
  'bare',
  'contrast',
  'numbers',
] as const;
export type Shown = (typeof SHOWN)[number];

/** These show the work itself; the others are marks on it, and lie on thread where nothing else is asked for. */
const VIEWS: ReadonlySet<Shown> = new Set(['thread', 'density', 'layers', 'stops', 'holes']);

/** Whether thread is drawn as it looks. */
export const showsThread = (shown: ReadonlySet<Shown>): boolean =>
  shown.has('thread') || ![...shown].some((one) => VIEWS.has(one));
