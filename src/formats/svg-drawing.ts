import { compose, type Matrix, translate } from 'transformation-matrix';
import type { Finding } from '../finding.js';
import { boxOf } from '../geometry/box.js';
import { InputError } from '../input-error.js';
import type { DrawnLine, KeptArea, LineDrawing } from './line-drawing.js';
import { drawnShape } from './svg-drawn-shape.js';
import { fitViewBox, frameOf, readViewBox, sizeFinding, type Viewport } from './svg-frame.js';
import { imageAsShape, keptAreas, keptNameOf, keptText } from './svg-keep-clear.js';
import { readLength } from './svg-length.js';
import { isUnpainted } from './svg-paint.js';
import { placeSubpath } from './svg-place.js';
import { isShape, readShape } from './svg-shape.js';
import { clipOf, type Look, lookOf, readStyleSheet } from './svg-style.js';
import { transformOf } from './svg-transform.js';
import { readSvgTree, type SvgElement } from './svg-tree.js';
import { HOLD_NO_LINES, type Unread, unreadFindings } from './svg-unread.js';
import { GROUPS, hrefOf, refuseTooManyUses, targetOf } from './svg-use.js';

interface Place {
  readonly look: Look;
  readonly toMm: Matrix;
  readonly viewport: Viewport;
  /** references of the `use` elements on the way here */
  readonly using: readonly string[];
  /** name of the area that is kept clear here; null outside of all */
  readonly kept: string | null;
}

/**
 * The lines of an SVG drawing in millimeters: every basic shape with its transforms, subpaths apart. A closed shape
 * with a fill is a patch. The frame is the drawing's width and height; without them the viewBox at 96 pixels to the
 * inch; without both, what the lines cover. Shapes and images marked as areas to be kept clear are no lines.
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
  refuseTooManyUses(root, byId, where);

  const frame = frameOf(root, where);
  const lines: DrawnLine[] = [];
  const keepClear: KeptArea[] = [];
  const kept: Finding[] = [];
  const start = { look: {}, toMm: frame.toMm, viewport: frame.user, using: [], kept: null };
  const clipped: Unread[] = [];
  const lineless: Unread[] = [];

  const visit = async (element: SvgElement, place: Place): Promise<void> => {
    const look = lookOf(element, place.look, sheet);
    if (look.display === 'none') return;
    const at = `${where} line ${element.line} (${element.name})`;
    const name = keptNameOf(element, place.kept, at);
    const own = { ...place, look, toMm: compose(place.toMm, transformOf(look, at)), kept: name };
    const before = lines.length;
    if (name !== null && element.name === 'image') await addShape(imageAsShape(element), own);
    else if (name !== null && element.name === 'text') kept.push(keptText(name, at));
    else if (HOLD_NO_LINES.has(element.name)) lineless.push({ what: element.name, at });
    else if (isShape(element.name)) await addShape(element, own);
    else if (element.name === 'use') await visitUse(element, own);
    else if (GROUPS.has(element.name)) {
      const inner =
        element.name === 'svg' && element !== root ? insideSvg(element, own, element, where) : own;
      const children =
        element.name === 'switch' ? element.children.filter(passes).slice(0, 1) : element.children;
      for (const child of children) await visit(child, inner);
    }
    const what = clipOf(look);
    if (what && lines.length > before) clipped.push({ what, at });
  };

  const addShape = async (element: SvgElement, { look, toMm, viewport, kept: name }: Place) => {
    if (look.visibility === 'hidden' || look.visibility === 'collapse') return;
    if (name === null && isUnpainted(look)) return;
    const at = `${where} line ${element.line} (${element.name})`;
    const subpaths = readShape(element, viewport, where).map((line) => placeSubpath(line, toMm, at));
    if (name === null) lines.push(...(await drawnShape(element.name, subpaths, look, byId, at)));
    else keepClear.push(...keptAreas(name, subpaths, look));
  };

  const visitUse = async (element: SvgElement, place: Place) => {
    const at = `${where} line ${element.line} (use)`;
    const target = targetOf(element, byId, place.using, at);
    const shift = (name: 'x' | 'y', whole: number) => readLength(element.attributes[name] ?? '0', whole) ?? 0;
    const { width, height } = place.viewport;
    const toMm = compose(place.toMm, translate(shift('x', width), shift('y', height)));
    const inside = { ...place, toMm, using: [...place.using, hrefOf(element)] };
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
  const size = frame.size ?? reachOf(lines);
  return {
    ...size,
    lines,
    origin: [0, 0],
    ...(keepClear.length > 0 && { keepClear }),
    findings: [
      ...kept,
      ...sizeFinding(frame, size, where),
      ...unreadFindings(clipped, lineless, sheet.passedOver, where),
    ],
  };
}

/** Where a drawing without a frame ends to the right and below, mm. */
function reachOf(lines: readonly DrawnLine[]): Viewport {
  const { right, bottom } = boxOf(lines.map(({ points }) => points));
  return { width: Math.max(0, right), height: Math.max(0, bottom) };
}

/** Whether a switch takes this child: it asks for nothing special, and is in English if in any language. */
function passes({ attributes }: SvgElement): boolean {
  const { requiredExtensions = '', systemLanguage } = attributes;
  return (
    requiredExtensions.trim() === '' && (systemLanguage === undefined || /(^|,)\s*en\b/.test(systemLanguage))
  );
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
