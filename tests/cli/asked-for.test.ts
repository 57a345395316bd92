import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { askedFor, askedOn, refuseBrokenWork } from '../../src/cli/asked-for.js';
import { loadDictionary, type Shelf } from '../../src/cli/dictionary.js';
import type { Dressing } from '../../src/formats/dressing.js';
import { InputError, InputErrors } from '../../src/input-error.js';
import { newFolder, removeFolder } from './run-cli.js';

let own: string;
beforeEach(() => {
  own = newFolder();
});
afterEach(() => removeFolder(own));

const builtIn = (shelf: Shelf, name: string): object =>
  JSON.parse(readFileSync(new URL(`../../motifs/${shelf}/${name}.json`, import.meta.url), 'utf8'));
const broken = { famly: 'x', sources: 'none' };
function put(shelf: Shelf, name: string, record: object): void {
  mkdirSync(join(own, shelf), { recursive: true });
  writeFileSync(join(own, shelf, `${name}.json`), JSON.stringify(record));
}

/** What a search is refused for, a line each; empty when something was found. */
async function refused(search: () => Promise<unknown>): Promise<string[]> {
  try {
    await search();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return (error instanceof InputErrors ? error.errors : [error]).map(({ message }) => message);
  }
  return [];
}
const asked = async (wanted: string) => {
  const dictionary = await loadDictionary(own);
  return refused(() => askedFor(dictionary, wanted));
};

describe('what a maker asks for by name', () => {
  it.each<[Shelf, string]>([
    ['stitches', 'fly'],
    ['ornaments', 'daisy'],
    ['treatments', 'fly-knots'],
  ])('is her own file of %s, and its mistakes when it is broken', async (shelf, name) => {
    const record = { ...builtIn(shelf, name), ...broken };
    // also where a built-in one of the name is there: that is not what she asks for
    for (const file of [name, `my-${name}`]) {
      put(shelf, file, { ...record, title: 'Heirloom' });
      const told = [expect.stringMatching('sources'), expect.stringMatching('famly')];
      for (const wanted of [file, file.toUpperCase().replaceAll('-', ' ')]) {
        const found = await asked(wanted);
        expect(found).toEqual(told);
        expect(found.every((line) => line.startsWith(join(own, shelf, `${file}.json`)))).toBe(true);
      }
      const dictionary = await loadDictionary(own);
      expect(await refused(() => askedOn(dictionary, shelf, file))).toEqual(told);
    }
    expect(await asked('heirloom')).toHaveLength(2);
    expect(await asked('cretan')).toEqual([]);
  });

  it('is refused with the mistakes of her own broken file where a saved dressing asks for it', async () => {
    put('stitches', 'mine', { ...builtIn('stitches', 'fly'), ...broken });
    put('ornaments', 'rose', { ...builtIn('ornaments', 'daisy'), ...broken });
    const dictionary = await loadDictionary(own);
    const row = (stitch: string) => ({ treatments: [{ rows: [{ stitch }] }] }) as unknown as Dressing;
    const standing = (ornament: string) =>
      ({ treatments: [], ornaments: [{ ornament }] }) as unknown as Dressing;
    expect(await refused(() => refuseBrokenWork(dictionary, row('mine')))).toHaveLength(2);
    expect(await refused(() => refuseBrokenWork(dictionary, standing('rose')))).toHaveLength(2);
    expect(await refused(() => refuseBrokenWork(dictionary, row('fly')))).toEqual([]);
  });

  it('is answered with the nearest name where nothing goes by it, broken or sound', async () => {
    put('stitches', 'mine', broken);
    expect(await asked('herringbon')).toEqual([
      'stitch "herringbon": there is no such stitch; did you mean "herringbone"?',
    ]);
  });

  it('is told where it cannot be read at all', async () => {
    mkdirSync(join(own, 'stitches', 'mine.json'), { recursive: true });
    expect(await asked('mine')).toEqual([expect.stringContaining('is a folder')]);
  });
});

describe('names that differ in capitals, hyphens and spaces alone', () => {
  const titled = (title: string) => ({ ...builtIn('stitches', 'fly'), title });

  it('are one name: hers stands before the built-in one', async () => {
    put('stitches', 'FLY', titled('My fly'));
    const dictionary = await loadDictionary(own);
    for (const wanted of ['fly', 'Fly', 'FLY']) {
      const { stitches } = await askedFor(dictionary, wanted);
      expect([...stitches].map(([name, { title }]) => [name, title])).toEqual([['fly', 'My fly']]);
    }
    expect(dictionary.hidden.stitches).toEqual(['fly']);
    expect(dictionary.personal.stitches.get('fly')).toBe(join(own, 'stitches', 'FLY.json'));
    // what names it in a treatment gets hers too
    expect(dictionary.stitches.get('fly')?.title).toBe('My fly');
  });

  it('of two of hers the plainly named one is used, and the other is told', async () => {
    put('stitches', 'My Own', titled('Second'));
    put('stitches', 'my-own', titled('First'));
    const dictionary = await loadDictionary(own);
    expect((await askedOn(dictionary, 'stitches', 'MY OWN')).title).toBe('First');
    expect(dictionary.unread.map(({ message }) => message)).toEqual([
      `${join(own, 'stitches', 'My Own.json')}: its name is that of my-own.json but for capitals or the signs between words; rename one of the two`,
    ]);
    expect(await asked('My Own')).toEqual([expect.stringContaining('rename one of the two')]);
  });

  it('on other shelves are none of its business', async () => {
    put('ornaments', 'fly', builtIn('ornaments', 'daisy'));
    const dictionary = await loadDictionary(own);
    expect(dictionary.unread).toEqual([]);
    expect([...(await askedFor(dictionary, 'fly')).stitches.keys()]).toEqual(['fly']);
  });
});
