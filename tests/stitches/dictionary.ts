import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { parseTreatment } from '../../src/formats/treatment.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import { parseOrnament, parseStitch } from '../../src/stitches/parse.js';
import type { Stitch, Unit, UnitLeg } from '../../src/stitches/stitch.js';

interface MotifFile {
  readonly name: string;
  readonly text: string;
}

function filesIn(shelf: string): readonly MotifFile[] {
  const folder = new URL(`../../motifs/${shelf}/`, import.meta.url);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => ({
      name: file.replace(/\.json$/, ''),
      text: readFileSync(new URL(file, folder), 'utf8'),
    }));
}

/** The built-in files: name and text. */
export const stitchFiles = filesIn('stitches');
export const ornamentFiles = filesIn('ornaments');
export const treatmentFiles = filesIn('treatments');

export const dictionary: readonly Stitch[] = stitchFiles.map(({ name, text }) => parseStitch(text, name));

/** The whole built-in dictionary. */
export const builtIn: Dictionary = {
  stitches: new Map(dictionary.map((stitch) => [stitch.name, stitch])),
  ornaments: new Map(ornamentFiles.map(({ name, text }) => [name, parseOrnament(text, name)])),
  treatments: new Map(treatmentFiles.map(({ name, text }) => [name, parseTreatment(text, name)])),
};

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
