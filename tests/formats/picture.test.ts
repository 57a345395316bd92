import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { readPicture } from '../../src/formats/picture.js';

/** 37 by 23 pixels, so that packed rows end inside a byte. */
const [width, height] = [37, 23];
const raw = new Uint8Array(3 * width * height).map((_, i) => (i * 2654435761) >>> 24);
const image = () => sharp(raw, { raw: { width, height, channels: 3 } });

/** The pixels as another library (sharp) reads them, and as they are read here. */
async function both(bytes: Buffer) {
  const other = await sharp(bytes).toColorspace('srgb').ensureAlpha().raw().toBuffer();
  const { data } = await readPicture(new Uint8Array(bytes), 'cloth');
  return { other: [...other], here: [...data] };
}

describe('a picture', () => {
  it.each([
    ['in full color', () => image().png()],
    ['with opacity', () => image().ensureAlpha(0.3).png()],
    ['of a palette of two colors', () => image().png({ palette: true, colors: 2 })],
    ['of a palette of sixteen', () => image().png({ palette: true, colors: 16 })],
    ['in grays', () => image().toColorspace('b-w').png()],
  ])('%s is read as another library reads it', async (_, make) => {
    const { other, here } = await both(await make().toBuffer());
    expect(here).toEqual(other);
  });

  it('of sixteen bits a channel keeps the upper eight', async () => {
    const { other, here } = await both(await image().toColorspace('rgb16').png().toBuffer());
    const furthest = here.reduce((far, value, i) => Math.max(far, Math.abs(value - other[i])), 0);
    expect(furthest).toBeLessThanOrEqual(1);
  });

  it.each([false, true])(
    'as JPEG is read within a few steps of another library, progressive: %s',
    async (progressive) => {
      const soft = await image()
        .resize(200, 120)
        .jpeg({ progressive, chromaSubsampling: '4:4:4' })
        .toBuffer();
      const { other, here } = await both(soft);
      const off = here.reduce((sum, value, i) => sum + Math.abs(value - other[i]), 0) / here.length;
      expect(off).toBeLessThan(1);
    },
  );

  it('is told by its content: text is none', async () => {
    const text = new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"/>');
    await expect(readPicture(text, 'a.png')).rejects.toThrow('a.png: is no picture; give a PNG or JPEG');
    await expect(readPicture(new Uint8Array(), 'a.png')).rejects.toThrow('is no picture');
  });

  it('that breaks off is told, wherever it breaks off', async () => {
    for (const bytes of [await image().png().toBuffer(), await image().jpeg().toBuffer()]) {
      for (const share of [0.02, 0.1, 0.5, 0.9]) {
        const part = new Uint8Array(bytes.subarray(0, Math.max(4, Math.floor(share * bytes.length))));
        await expect(readPicture(part, 'a.png')).rejects.toThrow(/is (a damaged (PNG|JPEG)|no) picture/);
      }
    }
  });

  it('of 100 megapixels is refused by what its head says, before anything is unpacked', async () => {
    const png = new Uint8Array(await image().png().toBuffer());
    new DataView(png.buffer).setUint32(16, 10_000);
    new DataView(png.buffer).setUint32(20, 10_000);
    await expect(readPicture(png, 'big.png')).rejects.toThrow(
      'big.png: is a picture of 100 megapixels; make it smaller',
    );
    const jpeg = new Uint8Array(await image().jpeg().toBuffer());
    const frame = jpeg.findIndex((byte, i) => byte === 0xff && jpeg[i + 1] === 0xc0);
    jpeg.set([0x27, 0x10, 0x27, 0x10], frame + 5);
    await expect(readPicture(jpeg, 'big.jpg')).rejects.toThrow('100 megapixels');
  });
});
