import type { Finding } from '../finding.js';
import { InputError } from '../input-error.js';
import type { KeptArea } from './line-drawing.js';
import { flattenSubpath } from './svg-flatten.js';
import type { Subpath } from './svg-shape.js';
import type { Look } from './svg-style.js';
import type { SvgElement } from './svg-tree.js';

/** The attribute that gives an element a part in the dressing, and the one part there is; a class of that name does the same. */
const ATTRIBUTE = 'data-seamwright';
const KEEP_CLEAR = 'keep-clear';

/**
 * What an area that an element marks is called: its title or id, else what the group it stands in is called; null when
 * nothing there is to be kept clear.
 *
 * @param inherited the name in the group it stands in, null when that is not kept clear
 * @throws InputError when the attribute says something else
 */
export function keptNameOf(element: SvgElement, inherited: string | null, at: string): string | null {
  const { attributes, children, line } = element;
  const part = attributes[ATTRIBUTE];
  if (part !== undefined && part.trim() !== KEEP_CLEAR) {
    throw new InputError('unknown-part', at, `${ATTRIBUTE} is "${part}"`, `it may be "${KEEP_CLEAR}"`);
  }
  const isMarked = part !== undefined || (attributes.class ?? '').split(/\s+/).includes(KEEP_CLEAR);
  if (!isMarked && inherited === null) return null;
  const title = children
    .find(({ name }) => name === 'title')
    ?.text.replace(/\s+/g, ' ')
    .trim();
  return title || (isMarked && attributes.id) || inherited || `the area on line ${line}`;
}

/** The area of a shape's lines, each closed; none when there is nothing in it. */
export function keptAreas(name: string, subpaths: readonly Subpath[], look: Look): KeptArea[] {
  const rings = subpaths.flatMap((subpath) => {
    const line = flattenSubpath({ ...subpath, closed: true });
    return line?.closed ? [line.points] : [];
  });
  if (rings.length === 0) return [];
  return [{ name, area: { rings, rule: look['fill-rule'] === 'evenodd' ? 'evenodd' : 'nonzero' } }];
}

/** An image covers its rectangle (Scalable Vector Graphics 2, section 12.3). */
export const imageAsShape = (element: SvgElement): SvgElement => ({ ...element, name: 'rect' });

/** Text is marked, but how far it reaches depends on its font. */
export const keptText = (name: string, at: string): Finding => ({
  level: 'warning',
  code: 'text-not-kept',
  message: `${at} is text, and how far it reaches is not known: ${name} is not kept clear; turn it into paths, or mark a shape round it`,
});
