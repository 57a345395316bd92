import type { Patch, SeamMap } from '../block/seam-map.js';
import { traceLine, traceRing } from './pen.js';
import { mutedCloth } from './shade.js';
import { element, type Frame, title } from './svg.js';
import { pathData } from './svg-pen.js';

/**
 * Cloth of the patches in their fabric colors, with its weave; muted cloth where the fabric is not known, and all over
 * the picture where there are no patches.
 */
export function clothPicture(map: SeamMap, frame: Frame): string {
  const all = {
    x: frame.left,
    y: frame.top,
    width: frame.right - frame.left,
    height: frame.bottom - frame.top,
  };
  const whole = element('rect', { ...all, fill: mutedCloth(0) });
  const patches = map.patches.map((patch) =>
    element(
      'path',
      { fill: patch.fabric ?? mutedCloth(patch.id), 'fill-rule': 'evenodd', d: patchData(patch) },
      title(`patch ${patch.id}`),
    ),
  );
  const weave = map.patches.length
    ? map.patches.map((patch) => element('path', { 'fill-rule': 'evenodd', d: patchData(patch) }))
    : [element('rect', all)];
  return (
    element('defs', {}, weavePattern) +
    element('g', {}, ...(patches.length ? patches : [whole])) +
    element('g', { fill: 'url(#weave)' }, ...weave)
  );
}

const patchData = (patch: Patch): string =>
  pathData((pen) => {
    for (const ring of [patch.boundary, ...patch.holes]) traceRing(pen, ring);
  });

/** Threads of the cloth: enough to tell cloth from paper, too faint to compete with stitches. */
const weavePattern = element(
  'pattern',
  { id: 'weave', width: 0.7, height: 0.7, patternUnits: 'userSpaceOnUse' },
  element('path', {
    d: 'M0 .17h.35M.35 .52h.35',
    stroke: '#fff',
    'stroke-width': 0.22,
    'stroke-opacity': 0.07,
  }),
  element('path', {
    d: 'M.17 .35v.35M.52 0v.35',
    stroke: '#000',
    'stroke-width': 0.22,
    'stroke-opacity': 0.05,
  }),
);

/** The seams as they show in cloth before any thread: a fold that shades off to both sides. */
export function foldPicture(map: SeamMap): string {
  const d = pathData((pen) => {
    for (const seam of map.seams) traceLine(pen, seam.points);
  });
  const fold = (width: number, strength: number) =>
    element('path', { d, 'stroke-width': width, 'stroke-opacity': strength });
  return element(
    'g',
    { fill: 'none', stroke: '#1b1410', 'stroke-linejoin': 'round' },
    fold(1.8, 0.05),
    fold(0.8, 0.08),
    fold(0.15, 0.4),
  );
}
