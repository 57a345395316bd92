import { basename } from 'node:path';
import type { SeamMap } from '../block/seam-map.js';
import type { FabricColor } from '../color/fabric.js';
import type { Dressing, PatchFabric } from '../formats/dressing.js';
import { plainNumber } from '../formats/plain-number.js';
import { InputError, InputErrors } from '../input-error.js';
import type { FabricOption } from './fabric-option.js';
import { readInput } from './input-file.js';
import { threadColor } from './thread-color.js';

/** A picture shows so much of the fabric from left to right unless the maker says how much, mm. */
const USUAL_WIDTH = 100;

/** A color of CSS has no letters behind a dot. */
const FILE = /\.[a-z]\w*$/i;

type Cloth = Pick<PatchFabric, 'colors' | 'busyness' | 'picture'>;

/**
 * The dressing with the fabrics that options name; what it said of the same patches before is replaced.
 * @param map the block as drawn
 * @throws InputErrors that tell every option that names no patch, color or picture
 */
export async function withFabricsAsked(
  dressing: Dressing,
  options: readonly FabricOption[] | undefined,
  map: SeamMap,
): Promise<Dressing> {
  if (!options) return dressing;
  const { patchOf, referenceToPatch } = await import('../asked/fabrics.js');
  const slips: InputError[] = [];
  const named = new Map<number, PatchFabric>();
  for (const option of options) {
    try {
      checkPatches(option, map);
      const cloth = await clothOf(option);
      for (const id of option.patches)
        named.set(id, { patch: referenceToPatch(map.patches[id - 1]), ...cloth });
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      slips.push(error);
    }
  }
  if (slips.length > 0) throw slips.length > 1 ? new InputErrors(slips) : slips[0];
  const stayed = (dressing.fabrics ?? []).filter(({ patch }) => !named.has(patchOf(map, patch)?.id ?? 0));
  const fabrics = [...stayed, ...named.values()].sort((a, b) => a.patch.id - b.patch.id);
  return { ...dressing, fabrics };
}

function checkPatches({ said, patches }: FabricOption, map: SeamMap): void {
  const missing = patches.find((id) => id > map.patches.length);
  if (missing === undefined) return;
  const { length } = map.patches;
  throw new InputError(
    'no-such-patch',
    said,
    `the block has no patch ${missing}`,
    length ? `its patches are 1 to ${length}` : 'it has none, since its lines close nothing',
  );
}

async function clothOf({ said, words }: FabricOption): Promise<Cloth> {
  const measures = new Map<string, number>();
  const colors: string[] = [];
  for (const word of words) {
    const [name, value] = /^(busy|wide)\s*:\s*(.*)$/.exec(word)?.slice(1) ?? [];
    if (name === undefined) colors.push(word);
    else measures.set(name, measured(said, name, value));
  }
  const [wide, busy] = [measures.get('wide'), measures.get('busy')];
  const isPicture = (word: string) => /\.(png|jpe?g)$/i.test(word);
  const file = colors.find((word) => FILE.test(word) && !isPicture(word));
  if (file !== undefined) {
    const wrong = `'${file}' does not end in .png, .jpg or .jpeg`;
    throw new InputError('bad-fabric', said, wrong, 'give a PNG or JPEG picture of the fabric');
  }
  const picture = colors.find(isPicture);
  if (picture === undefined) {
    if (wide !== undefined || colors.length === 0) {
      const wrong = colors.length === 0 ? 'names no color' : 'says how wide a picture is, and names none';
      throw new InputError('bad-fabric', said, wrong, 'give a color, such as #7a2f3b, or a picture file');
    }
    const shared = await Promise.all(colors.map((word) => sharedColor(word, said)));
    return { colors: shared, ...(busy !== undefined && { busyness: busy }) };
  }
  if (colors.length > 1) {
    throw new InputError(
      'bad-fabric',
      said,
      'names a picture and something else',
      'a picture tells the colors itself; only busy and wide may stand beside it',
    );
  }
  const found = await clothInPicture(picture, wide ?? USUAL_WIDTH);
  return busy === undefined ? found : { ...found, busyness: busy };
}

/** How busy a fabric is, and how wide the piece in a picture is, with the range of each. */
const RANGES: Readonly<Record<string, readonly [number, number]>> = { busy: [0, 1], wide: [5, 2000] };

function measured(said: string, name: string, word: string): number {
  const value = plainNumber(word);
  const [least, most] = RANGES[name];
  if (value >= least && value <= most) return value;
  const unit = name === 'wide' ? ' mm' : '';
  throw new InputError(
    'bad-number',
    said,
    `${name} is '${word}'`,
    `give a number from ${least} to ${most}${unit}`,
  );
}

async function sharedColor(word: string, said: string): Promise<FabricColor> {
  const [color, share] = /^(.*?)\s*:\s*([\d.]+)$/.exec(word)?.slice(1) ?? [word, '1'];
  const value = plainNumber(share);
  if (!(value > 0 && value <= 1000)) {
    throw new InputError('bad-number', said, `the share of ${color} is '${share}'`, 'give a number above 0');
  }
  return { hex: await threadColor(color, said), share: value };
}

async function clothInPicture(path: string, wide: number): Promise<Cloth> {
  const bytes = await readInput(path);
  const [{ readPicture }, { pictureFabric }, { loadDifference }] = await Promise.all([
    import('../formats/picture.js'),
    import('../color/picture-fabric.js'),
    import('../color/difference.js'),
  ]);
  const fabric = pictureFabric(await readPicture(bytes, path), wide, await loadDifference());
  if (fabric === null) {
    throw new InputError('empty-picture', path, 'is transparent all over', 'give a picture of the fabric');
  }
  const colors = fabric.colors.map(({ hex, share }) => ({ hex, share: Math.round(1000 * share) / 1000 }));
  return { colors, busyness: fabric.busyness, picture: basename(path) };
}
