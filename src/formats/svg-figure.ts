import { compose, type Matrix } from 'transformation-matrix';
import { InputError } from '../input-error.js';
import { frameOf } from './svg-frame.js';
import { placeSubpath } from './svg-place.js';
import { isShape, readShape, type Subpath } from './svg-shape.js';
import { transformOf } from './svg-transform.js';
import { readSvgTree, type SvgElement } from './svg-tree.js';

/** An element of a small drawing: what it is, what it says of itself, and where it stands. */
export interface FigureElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** file and line, for messages */
  readonly where: string;
}

/** A line of a small drawing with what its element says of it, in mm, y down. */
export interface FigureLine extends FigureElement {
  readonly line: Subpath;
  /** which group it stands in, counted from 0; -1 outside all groups */
  readonly group: number;
}

export interface SvgFigure {
  /** in the order drawn */
  readonly lines: readonly FigureLine[];
  /** groups and layers */
  readonly groups: readonly FigureElement[];
  /** elements that are seen in the drawing, or show others, and are not read */
  readonly unread: readonly FigureElement[];
  /** what is wrong with single elements, which are left out */
  readonly mistakes: readonly InputError[];
}

/** Elements that are not seen where they stand. */
const UNSEEN: ReadonlySet<string> = new Set([
  'clipPath',
  'defs',
  'desc',
  'filter',
  'linearGradient',
  'marker',
  'mask',
  'metadata',
  'pattern',
  'radialGradient',
  'script',
  'style',
  'symbol',
  'title',
  'view',
]);
/** Elements that show what stands in them. */
const HOLDING: ReadonlySet<string> = new Set(['g', 'svg', 'a', 'switch']);

/**
 * The lines of a drawing in the order drawn, each with its element's attributes and the outermost group it stands in.
 * Paint is not looked at.
 * @throws InputError with the line number where the text as a whole cannot be read: not XML, no SVG
 */
export function readSvgFigure(text: string, where: string): SvgFigure {
  const root = readSvgTree(text, where);
  const frame = frameOf(root, where);
  const lines: FigureLine[] = [];
  const groups: FigureElement[] = [];
  const unread: FigureElement[] = [];
  const mistakes: InputError[] = [];
  let outermost = 0;
  const visit = (element: SvgElement, toMm: Matrix, group: number): void => {
    const { name, attributes } = element;
    const at = `${where} line ${element.line} (${name})`;
    const own = { name, attributes, where: at };
    if (UNSEEN.has(name)) return;
    if (!isShape(name) && !HOLDING.has(name)) {
      unread.push(own);
      return;
    }
    const { transform } = attributes;
    const placed = transform === undefined ? toMm : compose(toMm, transformOf({ transform }, at));
    if (isShape(name)) {
      for (const line of readShape(element, frame.user, where)) {
        lines.push({ ...own, line: placeSubpath(line, placed, at), group });
      }
      return;
    }
    if (name === 'g') groups.push(own);
    const inner = name === 'g' && group < 0 ? outermost++ : group;
    for (const child of element.children) visited(child, placed, inner);
  };
  const visited = (element: SvgElement, toMm: Matrix, group: number): void => {
    try {
      visit(element, toMm, group);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      mistakes.push(error);
    }
  };
  for (const child of root.children) visited(child, frame.toMm, -1);
  return { lines, groups, unread, mistakes };
}
