import { loadDifference } from '../../src/color/difference.js';
import { pictureFabric } from '../../src/color/picture-fabric.js';
import type { Cloth, DrawAsks } from './drawing-messages.js';

/** The main colors of fabrics and how busy they are, from pictures of them. */
export async function fabricsIn({ picture, pieces }: DrawAsks['fabrics']['ask']): Promise<(Cloth | null)[]> {
  const difference = await loadDifference();
  return pieces.map(({ pixels, widthMm }): Cloth | null => {
    const fabric = pictureFabric(pixels, widthMm, difference);
    if (!fabric) return null;
    const colors = fabric.colors.map(({ hex, share }) => ({ hex, share: Math.round(1000 * share) / 1000 }));
    return { colors, busyness: fabric.busyness, picture };
  });
}
