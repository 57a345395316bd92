import { InputError } from '../input-error.js';
import { isShape } from './svg-shape.js';
import { MOST_ELEMENTS, type SvgElement } from './svg-tree.js';

/** Elements whose content is drawn where it stands. All others (defs, clips, masks, text, images) hold no lines. */
export const GROUPS: ReadonlySet<string> = new Set(['svg', 'g', 'a', 'switch']);
/** `use` elements that lead to each other in a longer chain than this are no drawing, but would end the program. */
const DEEPEST_USE = 200;

/** The element that a `use` element shows, by its reference: "#patch". */
export const hrefOf = ({ attributes }: SvgElement): string =>
  attributes.href ?? attributes['xlink:href'] ?? '';

/**
 * The element that a `use` element shows.
 *
 * @param using references of the `use` elements on the way to it
 * @throws InputError when there is no such element, it uses itself, or the chain is too long
 */
export function targetOf(
  element: SvgElement,
  byId: ReadonlyMap<string, SvgElement>,
  using: readonly string[],
  at: string,
): SvgElement {
  const href = hrefOf(element);
  const target = href.startsWith('#') ? byId.get(href.slice(1)) : undefined;
  if (!target)
    throw new InputError('use-lost', at, `points to "${href}"`, 'point to an element of the same file');
  if (using.includes(href)) {
    throw new InputError('use-cycle', at, `uses ${href}, which uses itself`, 'draw the shape once');
  }
  if (using.length >= DEEPEST_USE) {
    const wrong = `is the end of a chain of more than ${DEEPEST_USE} use elements`;
    throw new InputError('use-too-deep', at, wrong, 'draw the shape where it is wanted');
  }
  return target;
}

/**
 * Refuses a drawing whose `use` elements make many of few before any of it is drawn. Every element is counted once,
 * whatever the number of its uses.
 *
 * @throws InputError when more than MOST_ELEMENTS elements would be drawn
 */
export function refuseTooManyUses(
  root: SvgElement,
  byId: ReadonlyMap<string, SvgElement>,
  where: string,
): void {
  const known = new Map<SvgElement, number>();
  const drawnBy = (element: SvgElement, chain: number): number => {
    const before = known.get(element);
    if (before !== undefined) return before;
    // circles and endless chains are refused where they are met
    known.set(element, 0);
    let drawn = 1;
    if (element.name === 'use') {
      const target = byId.get(hrefOf(element).slice(1));
      if (target && chain < DEEPEST_USE) drawn += drawnBy(target, chain + 1);
    } else if (GROUPS.has(element.name) || element.name === 'symbol') {
      for (const child of element.children) drawn += drawnBy(child, chain);
    } else if (!isShape(element.name)) drawn = 0;
    known.set(element, drawn);
    return drawn;
  };
  if (drawnBy(root, 0) <= MOST_ELEMENTS) return;
  throw new InputError(
    'too-many-elements',
    where,
    `its use elements multiply to more than ${MOST_ELEMENTS} elements`,
    'draw the shapes of the block once',
  );
}
