import { withDotsPerMm } from '../../src/formats/png-size.js';

/** Dots to the inch of a picture, and to the millimeter. */
const DPI = 300;
const PER_MM = DPI / 25.4;
/** No side is longer than browsers can draw. */
const LONGEST = 8000;

/** A drawing of the core's own as a PNG picture. */
export async function pngOf(svg: Uint8Array): Promise<Blob> {
  const url = URL.createObjectURL(new Blob([svg as BlobPart], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const [width, height] = sizeOf(svg);
    const scale = Math.min(PER_MM, LONGEST / Math.max(width, height));
    const canvas = new OffscreenCanvas(Math.round(width * scale), Math.round(height * scale));
    canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
    const png = await canvas.convertToBlob({ type: 'image/png' });
    return new Blob([withDotsPerMm(new Uint8Array(await png.arrayBuffer()), scale) as BlobPart], {
      type: 'image/png',
    });
  } finally {
    URL.revokeObjectURL(url);
  }
}

/** How large a drawing of the core's own is, mm, as it says itself: an image knows whole pixels only. */
function sizeOf(svg: Uint8Array): [width: number, height: number] {
  const head = new TextDecoder().decode(svg.subarray(0, 1000));
  const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(head)!;
  return [Number(width), Number(height)];
}
