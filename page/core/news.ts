import type { DrawnBlock, DrawnStop, Picture } from './messages.js';

/** A stop whose thread the page has. */
type KnownStop = Omit<DrawnStop, 'xy' | 'cuts'>;

/** A picture without what the page has of it: while a seam is dragged, little is new from one to the next. */
export interface PictureNews extends Omit<Picture, 'block' | 'stops'> {
  /** null for the one that the page has */
  readonly block: DrawnBlock | null;
  readonly stops: readonly (DrawnStop | KnownStop)[];
}

/** What the page has of a picture, by keys. */
export const keysOf = ({ block, stops }: Picture): string[] => [block.key, ...stops.map(({ key }) => key)];

/** @param has keys of what the page has */
export function newsOf(picture: Picture, has: readonly string[]): PictureNews {
  const known = new Set(has);
  return {
    ...picture,
    block: known.has(picture.block.key) ? null : picture.block,
    stops: picture.stops.map((stop) => {
      if (!known.has(stop.key)) return stop;
      const { xy: _, cuts: __, ...rest } = stop;
      return rest;
    }),
  };
}

/** The whole picture. @param before the one whose keys were told */
export function withNews(before: Picture | null, news: PictureNews): Picture {
  const known = new Map(before?.stops.map((stop) => [stop.key, stop] as const));
  const stops = news.stops.map((stop): DrawnStop => {
    if ('xy' in stop) return stop;
    const same = known.get(stop.key)!;
    const { title, kind, seams } = stop;
    const isSame = same.title === title && same.kind === kind && String(same.seams) === String(seams);
    return isSame ? same : { ...stop, xy: same.xy, cuts: same.cuts };
  });
  return { ...news, block: news.block ?? before!.block, stops };
}
