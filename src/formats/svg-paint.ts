import { InputError } from '../input-error.js';
import type { Look } from './svg-style.js';
import type { SvgElement } from './svg-tree.js';

/** What stands for a gradient or pattern that has no color to go by. */
const PLAIN_CLOTH = '#808080';

/**
 * The fabric color of a closed shape, or null when the shape is only a line. A fill that somebody wrote makes a patch;
 * the default black of a shape that has a stroke is left over from drawing lines. Without any stroke it is what is seen.
 *
 * @param byId for gradients: their first color stands for the cloth
 */
export async function fabricOf(
  look: Look,
  byId: ReadonlyMap<string, SvgElement>,
  place: string,
): Promise<string | null> {
  const stroked = look.stroke !== undefined && look.stroke !== 'none';
  const fill = look.fill ?? (stroked ? 'none' : '#000000');
  if (fill === 'none' || fill === 'transparent' || Number.parseFloat(look['fill-opacity'] ?? '1') === 0)
    return null;
  const server = /^url\(\s*['"]?#([^)'"]+)['"]?\s*\)\s*(.*)$/.exec(fill);
  if (server) {
    const color = firstStop(server[1], byId, new Set()) ?? (server[2] || PLAIN_CLOTH);
    return color === 'none' ? null : hexOf(color, look, place);
  }
  return hexOf(fill, look, place);
}

const isNoPaint = (paint: string | undefined): boolean => paint === 'none' || paint === 'transparent';

/** Whether nothing of a shape can be seen: no fill and, in so many words, no stroke. */
export const isUnpainted = (look: Look): boolean => isNoPaint(look.stroke) && isNoPaint(look.fill);

async function hexOf(color: string, look: Look, place: string): Promise<string | null> {
  const text = /^currentcolor$/i.test(color) ? (look.color ?? '#000000') : color;
  if (/^#[0-9a-f]{6}$/i.test(text)) return text.toLowerCase();
  const { parse, formatHex } = await import('culori');
  const parsed = parse(text);
  if (!parsed)
    throw new InputError('bad-color', place, `fill is "${color}"`, 'give a CSS color such as #7d8a91');
  if (parsed.alpha === 0) return null;
  return formatHex(parsed);
}

function firstStop(id: string, byId: ReadonlyMap<string, SvgElement>, seen: Set<string>): string | null {
  const server = byId.get(id);
  if (!server || seen.has(id)) return null;
  seen.add(id);
  const stop = server.children.find(({ name }) => name === 'stop');
  if (stop) {
    const styled = /(?:^|;)\s*stop-color\s*:\s*([^;]+)/.exec(stop.attributes.style ?? '')?.[1];
    return (styled ?? stop.attributes['stop-color'] ?? '#000000').trim();
  }
  const next = server.attributes.href ?? server.attributes['xlink:href'];
  return next?.startsWith('#') ? firstStop(next.slice(1), byId, seen) : null;
}
