import {
  existsSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checkOutputs, writeOutputs } from '../../src/cli/output-files.js';
import { contents, newFolder, removeFolder } from './run-cli.js';

let folder: string;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => removeFolder(folder));
const at = (name: string) => join(folder, name);

describe('writing outputs', () => {
  it('replaces a file whole and leaves nothing beside it', async () => {
    writeFileSync(at('a.svg'), 'old and longer than the new');
    await writeOutputs([{ path: at('a.svg'), content: 'new' }]);
    expect(readFileSync(at('a.svg'), 'utf8')).toBe('new');
    expect(Object.keys(contents(folder))).toEqual(['a.svg']);
  });

  it('writes all of several files or none', async () => {
    writeFileSync(at('a.svg'), 'old');
    const before = contents(folder);
    const both = [
      { path: at('a.svg'), content: 'new' },
      { path: at('a-name-that-is-too-long'.repeat(20)), content: 'new' },
    ];
    await expect(writeOutputs(both)).rejects.toThrow('too-long');
    expect(contents(folder)).toEqual(before);
  });

  it('writes nothing when the report cannot be told', async () => {
    writeFileSync(at('a.svg'), 'old');
    const before = contents(folder);
    const untold = writeOutputs([{ path: at('a.svg'), content: 'new' }], () =>
      Promise.reject(new Error('full')),
    );
    await expect(untold).rejects.toThrow('full');
    expect(contents(folder)).toEqual(before);
  });

  it('writes where a link leads that leads to no file yet', async () => {
    symlinkSync(at('real.svg'), at('link.svg'));
    await writeOutputs([{ path: at('link.svg'), content: 'new' }]);
    expect(lstatSync(at('link.svg')).isSymbolicLink()).toBe(true);
    expect(readFileSync(at('real.svg'), 'utf8')).toBe('new');
  });

  it('follows a link to a link that leads to no file yet', async () => {
    symlinkSync(at('second.svg'), at('first.svg'));
    symlinkSync(at('real.svg'), at('second.svg'));
    await writeOutputs([{ path: at('first.svg'), content: 'new' }]);
    expect(lstatSync(at('second.svg')).isSymbolicLink()).toBe(true);
    expect(readFileSync(at('real.svg'), 'utf8')).toBe('new');
  });

  it('writes behind a link and keeps the link', async () => {
    writeFileSync(at('real.svg'), 'old');
    symlinkSync(at('real.svg'), at('link.svg'));
    await writeOutputs([{ path: at('link.svg'), content: 'new' }]);
    expect(lstatSync(at('link.svg')).isSymbolicLink()).toBe(true);
    expect(readFileSync(at('real.svg'), 'utf8')).toBe('new');
  });
});

describe('what a killed process left beside', () => {
  const part = (n: number) => at(`.seamwright-${process.pid}-${n}.part`);

  it('stops nobody, and stays as it is while it may still be written', async () => {
    for (const n of [0, 1]) writeFileSync(part(n), 'half');
    const both = ['a.svg', 'b.svg'].map((name) => ({ path: at(name), content: name }));
    await writeOutputs(both);
    expect(readFileSync(at('a.svg'), 'utf8')).toBe('a.svg');
    expect(readFileSync(at('b.svg'), 'utf8')).toBe('b.svg');
    expect([0, 1].map((n) => readFileSync(part(n), 'utf8'))).toEqual(['half', 'half']);
    expect(Object.keys(contents(folder))).toHaveLength(4);
  });

  it('is removed when it is old, and nothing else is', async () => {
    const old = new Date(Date.now() - 2 * 60 * 60 * 1000);
    for (const name of ['.seamwright-1-0.part', '.seamwright-notes.part', 'mine.part']) {
      writeFileSync(at(name), 'half');
      utimesSync(at(name), old, old);
    }
    await writeOutputs([{ path: at('a.svg'), content: 'new' }]);
    expect(Object.keys(contents(folder))).toEqual(['.seamwright-notes.part', 'a.svg', 'mine.part']);
  });
});

it('a complaint names what the maker said', async () => {
  const path = join(folder, 'a-name-that-is-too-long'.repeat(20));
  await expect(writeOutputs([{ path, content: '', said: '--library own' }])).rejects.toMatchObject({
    path: '--library own',
  });
  await expect(writeOutputs([{ path, content: '' }])).rejects.toMatchObject({ path: `--out ${path}` });
});

describe('checking outputs before the work', () => {
  it('lets new names and other files pass', () => {
    writeFileSync(at('in.svg'), '');
    writeFileSync(at('other.svg'), '');
    expect(() =>
      checkOutputs([{ path: at('new.dst') }, { path: at('other.svg') }], [at('in.svg')]),
    ).not.toThrow();
    expect(existsSync(at('new.dst'))).toBe(false);
  });

  it('sees that two names are one file through a linked folder', () => {
    mkdirSync(at('real'));
    symlinkSync(at('real'), at('linked'));
    expect(() => checkOutputs([{ path: at('real/x.dst') }, { path: at('linked/x.dst') }], [])).toThrow(
      /same file/,
    );
  });
});
