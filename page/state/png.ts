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
    // CSS pixels are 96 to the inch
    const [width, height] = [image.width, image.height].map((px) => (px * 25.4) / 96);
    const scale = Math.min(PER_MM, LONGEST / Math.max(width, height));
    const canvas = new OffscreenCanvas(Math.round(width * scale), Math.round(height * scale));
    canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await canvas.convertToBlob({ type: 'image/png' });
  } finally {
    URL.revokeObjectURL(url);
  }
}
