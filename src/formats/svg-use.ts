import { InputError } from '../input-error.js';
import { MOST_ELEMENTS, type SvgElement } from './svg-tree.js';

/** Elements whose content is drawn where it stands. All others (defs, clips, masks, text, images) hold no lines. */
export const GROUPS: ReadonlySet<string> = new Set(['svg', 'g', 'a', 'switch']);
/** `use` elements that lead to each other in a longer chain than this are no drawing, but would end the program. */
const DEEPEST_USE = 200;

/** Groups and `use` elements that stand in each other deeper than this would end the program. */
const DEEPEST_DRAWN = 1_000;
const SHOWS_CHILDREN: ReadonlySet<string> = new Set([...GROUPS, 'symbol']);

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

/** What an element draws with all that it shows: how many elements, and how deep they stand in each other. */
interface Drawn {
  readonly count: number;
  readonly depth: number;
}

/**
 * Refuses a drawing whose `use` elements make many of few, or nest without end, before any of it is drawn. Every element
 * is counted once, whatever the number of its uses.
 *
 * @throws InputError when more than MOST_ELEMENTS elements would be drawn, or deeper than DEEPEST_DRAWN
 */
export function refuseTooManyUses(
  root: SvgElement,
  byId: ReadonlyMap<string, SvgElement>,
  where: string,
): void {
  const known = new Map<SvgElement, Drawn>();
  const shownBy = (element: SvgElement): readonly SvgElement[] => {
    if (element.name !== 'use') return SHOWS_CHILDREN.has(element.name) ? element.children : [];
    const target = byId.get(hrefOf(element).slice(1));
    return target ? [target] : [];
  };
  const drawnBy = (element: SvgElement, above: number): Drawn => {
    const before = known.get(element);
    if (before) return before;
    if (above > DEEPEST_DRAWN) refuseDepth(element, where);
    // what leads back to itself is refused where it is met
    known.set(element, { count: 0, depth: 0 });
    let [count, depth] = [1, 0];
    for (const shown of shownBy(element)) {
      const inner = drawnBy(shown, above + 1);
      count += inner.count;
      depth = Math.max(depth, inner.depth);
    }
    if (depth >= DEEPEST_DRAWN) refuseDepth(element, where);
    known.set(element, { count, depth: depth + 1 });
    return { count, depth: depth + 1 };
  };
  if (drawnBy(root, 0).count <= MOST_ELEMENTS) return;
  throw new InputError(
    'too-many-elements',
    where,
    `its use elements multiply to more than ${MOST_ELEMENTS} elements`,
    'draw the shapes of the block once',
  );
}

function refuseDepth({ name, line }: SvgElement, where: string): never {
  const wrong = `is in a chain of use elements and groups that is more than ${DEEPEST_DRAWN} deep`;
  const at = `${where} line ${line} (${name})`;
  throw new InputError('use-too-deep', at, wrong, 'draw the shape where it is wanted');
}
