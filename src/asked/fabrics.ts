import type { Block } from '../block/block.js';
import type { Patch, SeamMap } from '../block/seam-map.js';
import { fabricOf } from '../color/fabric.js';
import type { Finding } from '../finding.js';
import type { Dressing, PatchFabric, PatchReference } from '../formats/dressing.js';
import { insideRings, pointInside } from '../geometry/area.js';
import type { Point } from '../geometry/point.js';

/** How a fabric remembers a patch. */
export function referenceToPatch({ id, boundary, holes }: Patch): PatchReference {
  const inside = pointInside([boundary, ...holes]);
  return { id, at: inside && [hundredths(inside[0]), hundredths(inside[1])] };
}

const hundredths = (mm: number): number => Math.round(100 * mm) / 100;

/** The patch that a reference means: the one its place lies in, or without a place the one of its number; null for a lost one. */
export function patchOf({ patches }: Pick<SeamMap, 'patches'>, { id, at }: PatchReference): Patch | null {
  if (!at) return patches[id - 1] ?? null;
  return patches.find((patch) => isInside(at, patch)) ?? null;
}

const isInside = (p: Point, { boundary, holes }: Patch): boolean => insideRings(p, [boundary, ...holes]);

/**
 * The block with the fabrics that the dressing names, the last one where it names several for a patch. One whose patch is
 * no longer there becomes a finding.
 * @param dressing with its places as they lie on this block
 */
export function withFabrics(block: Block, { fabrics = [] }: Pick<Dressing, 'fabrics'>): Block {
  if (fabrics.length === 0) return block;
  const { map } = block;
  const named = new Map<number, PatchFabric>();
  const findings: Finding[] = [];
  for (const fabric of fabrics) {
    const patch = patchOf(map, fabric.patch);
    if (patch) named.set(patch.id, fabric);
    else findings.push(lostFabric(fabric, map.patches.length));
  }
  return {
    ...block,
    map: { ...map, patches: map.patches.map((patch) => clothed(patch, named.get(patch.id))) },
    findings: [...block.findings, ...findings],
  };
}

function clothed(patch: Patch, named: PatchFabric | undefined): Patch {
  if (!named) return patch;
  const print = fabricOf(named.colors, named.busyness ?? 0);
  const { print: _, ...rest } = patch;
  const isPlain = print.colors.length === 1 && print.busyness === 0;
  return { ...rest, fabric: print.colors[0].hex, ...(!isPlain && { print }) };
}

const lostFabric = ({ patch: { id, at } }: PatchFabric, count: number): Finding => ({
  level: 'warning',
  code: 'lost-fabric',
  message: `the dressing names a fabric for patch ${id}, which is not where it was; ${
    count ? `say it again, such as --fabric ${Math.min(id, count)}=#7a2f3b` : 'the block has no patches'
  }`,
  ...(at && { at }),
});
