import type { Stop } from './design.js';

/** What a color stop of several is called: its thread, when it is all in one, then the lines and figures in it. */
export function mergedTitle(stops: readonly Stop[], ofOneThread: boolean): string {
  const lines = new Set(stops.flatMap(({ seams }) => seams));
  const seams = [...lines].filter((line) => line !== 'outline').sort((a, b) => a - b);
  const figures = stops.filter(({ kind }) => kind === 'ornament').length;
  return [
    ofOneThread ? stops[0].thread.name : 'All in one thread',
    ...(seams.length === 1 ? [`seam ${seams[0]}`] : seams.length ? [`seams ${inSpans(seams)}`] : []),
    ...(lines.has('outline') ? ['edge'] : []),
    ...(figures === 1 ? ['an ornament'] : figures ? [`${figures} ornaments`] : []),
  ].join(', ');
}

/** Ascending numbers as people write them: 1-4, 7. */
function inSpans(numbers: readonly number[]): string {
  const spans: [from: number, to: number][] = [];
  for (const number of numbers) {
    const last = spans[spans.length - 1];
    if (last && last[1] === number - 1) last[1] = number;
    else spans.push([number, number]);
  }
  return spans
    .map(([from, to]) => (from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from}-${to}`))
    .join(', ');
}
