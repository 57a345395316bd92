import { compose, type Matrix } from 'transformation-matrix';
import { frameOf } from './svg-frame.js';
import { placeSubpath } from './svg-place.js';
import { isShape, readShape, type Subpath } from './svg-shape.js';
import { transformOf } from './svg-transform.js';
import { readSvgTree, type SvgElement } from './svg-tree.js';

/** A line of a small drawing with what its element says of it, in mm, y down. */
export interface FigureLine {
  readonly line: Subpath;
  /** the element's attributes */
  readonly attributes: Readonly<Record<string, string>>;
  /** which group it stands in, counted from 0; -1 outside all groups */
  readonly group: number;
  /** file and line, for messages */
  readonly where: string;
}

/**
 * The lines of a drawing in the order drawn, each with its element's attributes and the outermost group it stands in.
 * Paint is not looked at.
 * @throws InputError with the line number: not XML, no SVG, bad numbers
 */
export function readSvgFigure(text: string, where: string): FigureLine[] {
  const root = readSvgTree(text, where);
  const frame = frameOf(root, where);
  const lines: FigureLine[] = [];
  let groups = 0;
  const visit = (element: SvgElement, toMm: Matrix, group: number): void => {
    const at = `${where} line ${element.line} (${element.name})`;
    const { transform } = element.attributes;
    const own = transform === undefined ? toMm : compose(toMm, transformOf({ transform }, at));
    if (isShape(element.name)) {
      for (const line of readShape(element, frame.user, where)) {
        lines.push({ line: placeSubpath(line, own, at), attributes: element.attributes, group, where: at });
      }
      return;
    }
    if (element.name !== 'g' && element.name !== 'svg') return;
    const inner = element.name === 'g' && group < 0 ? groups++ : group;
    for (const child of element.children) visit(child, own, inner);
  };
  for (const child of root.children) visit(child, frame.toMm, -1);
  return lines;
}
