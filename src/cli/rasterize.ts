import { Resvg } from '@resvg/resvg-js';

/** Dots to the millimeter: thread of 0.4 mm gets four, enough to see its twist of light. */
const DOTS_PER_MM = 10;
/** Larger pictures are drawn coarser, so that none needs more than 64 MB while it is made. */
const MOST_DOTS = 4000;

/** A picture of ours, whose units are millimeters, as PNG. */
export function rasterize(svg: string): Uint8Array {
  const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? ['', '100', '100'];
  const longer = Math.max(Number(width), Number(height));
  const dots = Math.min(DOTS_PER_MM, MOST_DOTS / longer);
  const fitTo = { mode: 'width', value: Math.max(1, Math.round(Number(width) * dots)) } as const;
  return new Resvg(svg, { fitTo, background: '#ffffff', font: { loadSystemFonts: false } }).render().asPng();
}
