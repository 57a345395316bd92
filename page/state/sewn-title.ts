/** How far the sewing is, for people. @param count stops that are sewn */
export const sewnTitle = (count: number, stops: readonly { readonly title: string }[]): string =>
  count === 0 ? 'before the first stop' : `${count} of ${stops.length}: ${stops[count - 1]?.title}`;
