import fc from 'fast-check';
import papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { readStash } from '../../src/formats/stash.js';
import { InputErrors } from '../../src/input-error.js';

const read = (text: string) => readStash(text, 'stash.csv');
const told = async (text: string): Promise<string[]> =>
  read(text).then(
    () => [],
    (error: Error) =>
      error instanceof InputErrors ? error.errors.map(({ message }) => message) : [error.message],
  );

describe('a stash of threads', () => {
  it('names threads with color, weight, code and finish; what is not said is No. 40', async () => {
    expect(
      await read('Name,Color,Weight,Code,Finish,Shelf\nBrick,#8C2F3F,30,117,matte,top\nIvory,ivory,,,,\n'),
    ).toEqual([
      { name: 'Brick', hex: '#8c2f3f', weight: 'No. 30', code: '117', finish: 'matte' },
      { name: 'Ivory', hex: '#fffff0', weight: 'No. 40' },
    ]);
  });

  it('has variegated threads of several colors', async () => {
    const [thread] = await read('name,color\nMeadow,"#5f7f42 rgb(200, 180, 90) white"\n');
    expect([thread.hex, ...thread.moreHex!]).toEqual(['#5f7f42', '#c8b45a', '#ffffff']);
  });

  it('may come from a spreadsheet: semicolons, tabs, byte order mark, columns in any order, empty lines', async () => {
    const one = { name: 'Brick; dark', hex: '#8c2f3f', weight: 'No. 40' };
    expect(await read('\uFEFFcolor;name\r\n\r\n#8c2f3f;"Brick; dark"\r\n;\r\n')).toEqual([one]);
    expect(await read('colour\tname\n#8c2f3f\tBrick; dark\n')).toEqual([one]);
  });

  it('is told everything that is wrong with it, line by line', async () => {
    const text = [
      'name,color,weight',
      'Brick,#8c2f3f,40',
      '"Two',
      'lines",nocolor,fat',
      'brick,red,No. 40',
      ',#000000,40',
      'Brick,red,30',
      'Pale,,40',
      'Glass,#ff000080,40',
    ].join('\n');
    expect(await told(text)).toEqual([
      "stash.csv line 3: 'nocolor' is no color; give one such as #7a2f3b or darkred",
      "stash.csv line 3: 'fat' is no weight; give one such as No. 40",
      'stash.csv line 5: "brick" in No. 40 stands in line 2 already; take one of them out, or tell them apart by name or weight',
      'stash.csv line 6: the thread has no name; name it',
      'stash.csv line 8: the thread has no color; give one such as #7a2f3b or darkred',
      "stash.csv line 9: '#ff000080' is no color; give one such as #7a2f3b or darkred",
    ]);
  });

  it('needs columns for name and color, once each', async () => {
    expect(await told('thread name,shade\nBrick,#8c2f3f\n')).toEqual([
      'stash.csv line 1: there is no column "name"; begin with a line such as name,color,code,weight,finish',
      'stash.csv line 1: there is no column "color"; begin with a line such as name,color,code,weight,finish',
    ]);
    expect(await told('name,color,hex\nBrick,red,red\n')).toEqual([
      'stash.csv line 1: columns 2 and 3 are both the color; keep one of them',
    ]);
  });

  it('names some thread', async () => {
    expect((await told(''))[0]).toContain('names no threads');
    expect((await told('name,color\n'))[0]).toContain('names no threads');
    expect((await told('name,color\n"Brick,red\n'))[0]).toContain('a quote that does not end');
  });

  it('that another program wrote is read as it was meant, whatever the names hold', () => {
    const name = fc
      .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
      .map((text) => `n${text.trim()}`);
    return fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(name, { minLength: 1, maxLength: 8, selector: (one) => one.toLowerCase() }),
        async (names) => {
          const text = papa.unparse([['name', 'color'], ...names.map((one) => [one, '#123456'])]);
          const found = await read(text);
          return JSON.stringify(found.map((one) => one.name)) === JSON.stringify(names);
        },
      ),
    );
  });
});
