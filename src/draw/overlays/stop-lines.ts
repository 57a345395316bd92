import { runsOfStop } from '../../check/density/runs-of-stop.js';
import type { SewnStitches } from '../../check/density/sewn-stitches.js';
import { traceLine } from '../pen.js';
import { type Attributes, element, title } from '../svg.js';
import { pathData } from '../svg-pen.js';
import type { Overlay } from './overlay.js';
import type { ShownWork } from './shown-work.js';
import { stopLook } from './stop-looks.js';

/** Every color stop that is shown, in a look of its own. Their numbers are drawn with `numbersOverlay`. */
export function stopsOverlay({ stitches, stops }: ShownWork): Overlay {
  const shown = stops.flatMap(({ title, isShown }, stop) => (isShown ? [{ stop, title }] : []));
  const named = shown.map(({ stop, title }) => ({
    stop,
    name: title ? `${stop + 1}: ${title}` : `${stop + 1}`,
  }));
  return {
    picture: named.map(({ stop, name }) => stopLines(stitches, stop, `stop ${name}`)).join(''),
    part: {
      heading: 'Color stops in the order of sewing',
      entries: named.map(({ stop, name }) => ({
        sample: (x, y) =>
          element('path', {
            ...ROUND,
            ...stopLook(stop),
            d: pathData((pen) => {
              pen.move(x - 3.5, y);
              pen.line(x + 3.5, y);
            }),
          }),
        told: name,
      })),
    },
  };
}

/** The stitches of one color stop, from 0, as plain lines in a look of its own. A line sewn again is drawn once. */
function stopLines(stitches: SewnStitches, stop: number, name: string): string {
  const { xy, start } = runsOfStop(stitches, stop);
  const seen = new Set<string>();
  const d = pathData((pen) => {
    for (let run = 0; run + 1 < start.length; run++) {
      // the part of a run not yet drawn begins here
      let from = start[run];
      for (let i = start[run]; i + 1 < start[run + 1]; i++) {
        const key = stitchKey(xy, i);
        if (seen.has(key)) {
          if (i > from) traceLine(pen, xy, from, i + 1);
          from = i + 1;
        }
        seen.add(key);
      }
      if (start[run + 1] - from > 1) traceLine(pen, xy, from, start[run + 1]);
    }
  });
  return element('g', { ...ROUND, ...stopLook(stop) }, title(name), element('path', { d }));
}

const ROUND: Attributes = { fill: 'none', 'stroke-linecap': 'round', 'stroke-linejoin': 'round' };

/** One name for a stitch in both directions. */
function stitchKey(xy: Float64Array, i: number): string {
  const [a, b] = [`${xy[2 * i]},${xy[2 * i + 1]}`, `${xy[2 * i + 2]},${xy[2 * i + 3]}`];
  return a < b ? `${a};${b}` : `${b};${a}`;
}
