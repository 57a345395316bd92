import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Difference, loadDifference } from '../../src/color/difference.js';
import { pictureFabric } from '../../src/color/picture-fabric.js';
import { readPicture } from '../../src/formats/picture.js';

/** A piece of cloth 100 mm wide, 6 pixels a mm, painted and saved by another library. */
async function cloth(inside: string, kind: 'png' | 'jpeg' = 'png') {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="600" height="420" viewBox="0 0 100 70">${inside}</svg>`;
  const bytes = await sharp(Buffer.from(svg))[kind]().toBuffer();
  return readPicture(new Uint8Array(bytes), 'cloth');
}

const ground = '<rect width="100" height="70" fill="#203050"/>';
/** Round dots of 1.6 mm in a square of 4 mm: 12.6 % of the cloth. */
const dots = `<pattern id="p" width="4" height="4" patternUnits="userSpaceOnUse"><circle cx="2" cy="2" r="0.8" fill="#f0e8d0"/></pattern>
  ${ground}<rect width="100" height="70" fill="url(#p)"/>`;
const halves = `${ground}<rect width="40" height="70" fill="#c03030"/>`;
const checks = `<pattern id="p" width="2" height="2" patternUnits="userSpaceOnUse"><rect width="1" height="1" fill="#fff"/><rect x="1" y="1" width="1" height="1" fill="#fff"/></pattern>
  <rect width="100" height="70" fill="#000"/><rect width="100" height="70" fill="url(#p)"/>`;

let difference: Difference;
beforeAll(async () => {
  difference = await loadDifference();
});

describe('the fabric in a picture', () => {
  it('of one color is that color, and not busy', async () => {
    expect(pictureFabric(await cloth(ground), 100, difference)).toEqual({
      colors: [{ hex: '#203050', share: 1 }],
      busyness: 0,
    });
  });

  it.each(['png', 'jpeg'] as const)(
    'with dots has both colors by the cloth they cover, as %s',
    async (kind) => {
      const { colors } = pictureFabric(await cloth(dots, kind), 100, difference)!;
      expect(colors).toHaveLength(2);
      expect(difference(colors[0].hex, '#203050')).toBeLessThan(4);
      expect(difference(colors[1].hex, '#f0e8d0')).toBeLessThan(8);
      expect(Math.abs(colors[1].share - (Math.PI * 0.8 ** 2) / 16)).toBeLessThan(0.03);
    },
  );

  it('in two plain halves is hardly busy; in checks as wide as a stitch it could not be busier', async () => {
    const calm = pictureFabric(await cloth(halves), 100, difference)!;
    expect(calm.colors.map(({ share }) => Math.round(100 * share))).toEqual([60, 40]);
    expect(calm.busyness).toBeLessThan(0.03);
    expect(pictureFabric(await cloth(checks), 100, difference)!.busyness).toBeGreaterThan(0.95);
  });

  it('is calm where its print is too small for the eye, and busy where the same print is as large as a stitch', async () => {
    const busyness = async (wide: number) => pictureFabric(await cloth(dots), wide, difference)!.busyness;
    expect(await busyness(100)).toBeGreaterThan(0.25);
    expect(await busyness(7)).toBeLessThan(0.15);
  });

  it('is what can be seen of it: transparent parts are not looked at', async () => {
    const part = await cloth('<rect width="30" height="70" fill="#c03030"/>');
    expect(pictureFabric(part, 100, difference)).toEqual({
      colors: [{ hex: '#c03030', share: 1 }],
      busyness: 0,
    });
    expect(pictureFabric(await cloth(''), 100, difference)).toBeNull();
  });
});
