import { Resvg } from '@resvg/resvg-js';
import { withDotsPerMm } from '../formats/png-size.js';

/** 300 dots to the inch, as printers take it: thread of 0.4 mm gets nearly five, enough to see its twist of light. */
const DOTS_PER_MM = 300 / 25.4;
/** Larger pictures are drawn coarser, so that none needs more than 100 MB while it is made. */
const MOST_DOTS = 4800;

/** A picture of ours, whose units are millimeters, as PNG that tells its size on paper. */
export function rasterize(svg: string): Uint8Array {
  const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? ['', '100', '100'];
  const longer = Math.max(Number(width), Number(height));
  const dots = Math.min(DOTS_PER_MM, MOST_DOTS / longer);
  const across = Math.max(1, Math.round(Number(width) * dots));
  const fitTo = { mode: 'width', value: across } as const;
  const drawn = new Resvg(svg, { fitTo, background: '#ffffff', font: { loadSystemFonts: false } }).render();
  return withDotsPerMm(drawn.asPng(), across / Number(width));
}
