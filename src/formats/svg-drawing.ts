import { compose, type Matrix, scale, translate } from 'transformation-matrix';
import { PX_PER_MM } from '../geometry/units.js';
import { InputError } from '../input-error.js';
import type { DrawnLine, LineDrawing } from './line-drawing.js';
import { drawnShape } from './svg-drawn-shape.js';
import { fitViewBox, fixedLength, readViewBox, type Viewport } from './svg-frame.js';
import { readLength } from './svg-length.js';
import { isUnpainted } from './svg-paint.js';
import { FARTHEST, placeSubpath } from './svg-place.js';
import { isShape, readShape } from './svg-shape.js';
import { type Look, lookOf, readStyleSheet } from './svg-style.js';
import { transformOf } from './svg-transform.js';
import { MOST_ELEMENTS, readSvgTree, type SvgElement } from './svg-tree.js';

/** Elements whose content is drawn where it stands. All others (defs, clips, masks, text, images) hold no lines. */
const GROUPS = new Set(['svg', 'g', 'a', 'switch']);
/** `use` elements that lead to each other in a longer chain than this are no drawing, but would end the program. */
const DEEPEST_USE = 200;

interface Place {
  readonly look: Look;
  readonly toMm: Matrix;
  readonly viewport: Viewport;
  /** ids of the `use` elements' targets on the way here */
  readonly using: readonly string[];
}

/**
 * The lines of an SVG drawing in millimeters: every basic shape with its transforms, subpaths apart. A closed shape
 * with a fill is a patch. The frame is the drawing's width and height; without them the viewBox at 96 pixels to the
 * inch; without both, what the lines cover.
 *
 * @param where the file's name, for messages
 * @throws InputError with the line number: not XML, no SVG, bad numbers, coordinates beyond 10 m, no lines
 */
export async function readSvgDrawing(text: string, where: string): Promise<LineDrawing> {
  const root = readSvgTree(text, where);
  const sheet = readStyleSheet(root);
  const byId = new Map<string, SvgElement>();
  const index = (element: SvgElement) => {
    if (element.attributes.id && !byId.has(element.attributes.id)) byId.set(element.attributes.id, element);
    element.children.forEach(index);
  };
  index(root);

  const frame = frameOf(root, where);
  const lines: DrawnLine[] = [];
  const start = { look: {}, toMm: frame.toMm, viewport: frame.user, using: [] };
  let visited = 0;

  const visit = async (element: SvgElement, place: Place): Promise<void> => {
    if (++visited > MOST_ELEMENTS) {
      throw new InputError(
        'too-many-elements',
        `${where} line ${element.line}`,
        `its use elements multiply to more than ${MOST_ELEMENTS} shapes`,
        'draw the block once',
      );
    }
    const look = lookOf(element, place.look, sheet);
    if (look.display === 'none') return;
    const own = {
      ...place,
      look,
      toMm: compose(place.toMm, transformOf(look, `${where} line ${element.line} (${element.name})`)),
    };
    if (isShape(element.name)) await addShape(element, own);
    else if (element.name === 'use') await visitUse(element, own);
    else if (GROUPS.has(element.name)) {
      const inner =
        element.name === 'svg' && element !== root ? insideSvg(element, own, element, where) : own;
      const children =
        element.name === 'switch' ? element.children.filter(passes).slice(0, 1) : element.children;
      for (const child of children) await visit(child, inner);
    }
  };

  const addShape = async (element: SvgElement, { look, toMm, viewport }: Place) => {
    if (look.visibility === 'hidden' || look.visibility === 'collapse' || isUnpainted(look)) return;
    const at = `${where} line ${element.line} (${element.name})`;
    const subpaths = readShape(element, viewport, where).map((line) => placeSubpath(line, toMm, at));
    lines.push(...(await drawnShape(element.name, subpaths, look, byId, at)));
  };

  const visitUse = async (element: SvgElement, place: Place) => {
    const href = element.attributes.href ?? element.attributes['xlink:href'] ?? '';
    const target = href.startsWith('#') ? byId.get(href.slice(1)) : undefined;
    const at = `${where} line ${element.line} (use)`;
    if (!target)
      throw new InputError('use-lost', at, `points to "${href}"`, 'point to an element of the same file');
    if (place.using.includes(href)) {
      throw new InputError('use-cycle', at, `uses ${href}, which uses itself`, 'draw the shape once');
    }
    if (place.using.length >= DEEPEST_USE) {
      throw new InputError(
        'use-too-deep',
        at,
        `is the end of a chain of more than ${DEEPEST_USE} use elements`,
        'draw the shape where it is wanted',
      );
    }
    const shift = (name: 'x' | 'y', whole: number) => readLength(element.attributes[name] ?? '0', whole) ?? 0;
    const { width, height } = place.viewport;
    const toMm = compose(place.toMm, translate(shift('x', width), shift('y', height)));
    const inside = { ...place, toMm, using: [...place.using, href] };
    if (target.name !== 'symbol' && target.name !== 'svg') return visit(target, inside);
    const inner = insideSvg(target, { ...inside, look: lookOf(target, place.look, sheet) }, element, where);
    for (const child of target.children) await visit(child, inner);
  };

  for (const child of root.children) await visit(child, { ...start, look: lookOf(root, {}, sheet) });
  if (!lines.length) {
    throw new InputError(
      'no-lines',
      where,
      'holds no lines',
      'draw the seams as paths, lines or filled patches',
    );
  }
  return { ...frameSize(frame, lines), lines, origin: [0, 0] };
}

/** Whether a switch takes this child: it asks for nothing special, and is in English if in any language. */
function passes({ attributes }: SvgElement): boolean {
  const { requiredExtensions = '', systemLanguage } = attributes;
  return (
    requiredExtensions.trim() === '' && (systemLanguage === undefined || /(^|,)\s*en\b/.test(systemLanguage))
  );
}

interface Frame {
  readonly toMm: Matrix;
  /** what percentages are of, in user units */
  readonly user: Viewport;
  /** mm, or null when the drawing does not say */
  readonly size: Viewport | null;
}

function frameOf(root: SvgElement, where: string): Frame {
  const box = readViewBox(root, where);
  let width = fixedLength(root, 'width', where);
  let height = fixedLength(root, 'height', where);
  if (box) {
    width ??= height === null ? box[2] : (height * box[2]) / box[3];
    height ??= (width * box[3]) / box[2];
  }
  if (width === null || height === null) {
    const user = { width: width ?? 0, height: height ?? 0 };
    return { toMm: scale(1 / PX_PER_MM), user, size: null };
  }
  const size = { width: inMm(width), height: inMm(height) };
  if (!(Math.max(size.width, size.height) <= FARTHEST)) {
    throw new InputError(
      'frame-too-large',
      `${where} line ${root.line}`,
      `the drawing is ${size.width} x ${size.height} mm`,
      'a block of up to 10 m can be read',
    );
  }
  if (!box) return { toMm: scale(1 / PX_PER_MM), user: { width, height }, size };
  const toMm = fitViewBox(box, size, root.attributes.preserveAspectRatio);
  return { toMm, user: { width: box[2], height: box[3] }, size };
}

/** Pixels in mm, free of the rounding that units leave behind: 130mm is 130. */
const inMm = (px: number): number => Math.round((px / PX_PER_MM) * 1e9) / 1e9;

function frameSize({ size }: Frame, lines: readonly DrawnLine[]): Viewport {
  if (size) return size;
  let [width, height] = [0, 0];
  for (const { points } of lines) {
    for (let i = 0; i < points.length; i += 2) {
      width = Math.max(width, points[i]);
      height = Math.max(height, points[i + 1]);
    }
  }
  return { width, height };
}

/** Inside a nested svg, or a symbol laid out by the `use` element that sets its size. */
function insideSvg(target: SvgElement, place: Place, sized: SvgElement, where: string): Place {
  const size = (name: 'width' | 'height') => {
    const text = sized.attributes[name] ?? target.attributes[name];
    return (text === undefined ? null : readLength(text, place.viewport[name])) ?? place.viewport[name];
  };
  const viewport = { width: size('width'), height: size('height') };
  const shift = (name: 'x' | 'y', whole: number) => readLength(target.attributes[name] ?? '0', whole) ?? 0;
  const moved = compose(
    place.toMm,
    translate(shift('x', place.viewport.width), shift('y', place.viewport.height)),
  );
  const box = readViewBox(target, where);
  if (!box) return { ...place, toMm: moved, viewport };
  const toMm = compose(moved, fitViewBox(box, viewport, target.attributes.preserveAspectRatio));
  return { ...place, toMm, viewport: { width: box[2], height: box[3] } };
}
