import { readdirSync, readFileSync } from 'node:fs';
import { parseStitch } from '../../src/stitches/parse.js';
import type { Stitch, Unit, UnitLeg } from '../../src/stitches/stitch.js';

const folder = new URL('../../motifs/stitches/', import.meta.url);

/** The built-in stitch files: name of the stitch and text. */
export const stitchFiles: readonly { readonly name: string; readonly text: string }[] = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .sort()
  .map((file) => ({ name: file.replace(/\.json$/, ''), text: readFileSync(new URL(file, folder), 'utf8') }));

export const dictionary: readonly Stitch[] = stitchFiles.map(({ name, text }) => parseStitch(text, name));

export function stitchNamed(name: string): Stitch {
  const stitch = dictionary.find((known) => known.name === name);
  if (!stitch) throw new Error(`no built-in stitch ${name}`);
  return stitch;
}

export function legNamed(unit: Unit, name: string): UnitLeg {
  const leg = unit.legs.find((known) => known.name === name);
  if (!leg) throw new Error(`no leg ${name}`);
  return leg;
}

export const nodeAt = (unit: Unit, node: number): [number, number] => [
  unit.nodes[2 * node],
  unit.nodes[2 * node + 1],
];

/** First and last point of a leg. */
export const endsOf = (leg: UnitLeg): [[number, number], [number, number]] => [
  [leg.path[0], leg.path[1]],
  [leg.path[leg.path.length - 2], leg.path[leg.path.length - 1]],
];
