import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkTreatmentFile } from '../../src/formats/treatment-file.js';
import { newFolder, removeFolder, seamwright } from './run-cli.js';

const guide = readFileSync(new URL('../../motifs/README.md', import.meta.url), 'utf8');

/** The blocks of code under a heading of the guide to writing stitches, each after its language. */
function blocksUnder(heading: string): { language: string; text: string }[] {
  const [, section = ''] = guide.split(`\n## ${heading}\n`);
  const [own] = section.split('\n## ');
  return [...own.matchAll(/```(\w*)\n([\s\S]*?)```/g)].map(([, language, text]) => ({ language, text }));
}
const [stitch] = blocksUnder('Writing a stitch');
const [ornament] = blocksUnder('Writing an ornament');
const [drawing, taken] = blocksUnder('Drawing a stitch');
const [treatment] = blocksUnder('Writing a treatment');
/** Every command that the guide shows, in blocks and between words, as one would type it. */
const commands = [...guide.matchAll(/npx seamwright ([^#`\n]*)/g)].map(([, words]) => words.trim());

const folder = newFolder();
const put = (name: string, text: string) => {
  mkdirSync(dirname(join(folder, name)), { recursive: true });
  writeFileSync(join(folder, name), text);
};
const inLibrary = (name: string) => readFileSync(join(folder, 'own', name), 'utf8');
const run = (command: string) => seamwright(folder, ...command.split(/\s+/));

beforeAll(async () => {
  process.env.SEAMWRIGHT_LIBRARY = 'own';
  put('own/stitches/tall-and-short.json', stitch.text);
  put('own/ornaments/berry-sprig.json', ornament.text);
  put('own/treatments/gold-and-garnet.json', treatment.text);
  put('curl.svg', drawing.text);
  put(
    'panel.svg',
    '<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="90mm" viewBox="0 0 90 90" fill="none" stroke="#000"><path d="M5 20H85M5 45H85M5 70H85"/></svg>',
  );
  await run('dress panel.svg --stitch feather --out panel.dressing.json');
}, 60_000);
afterAll(() => {
  delete process.env.SEAMWRIGHT_LIBRARY;
  removeFolder(folder);
});

describe('the guide to writing stitches shows what is so', () => {
  it('every command in it runs as it stands', async () => {
    expect(commands.length).toBeGreaterThanOrEqual(7);
    const failed: string[] = [];
    for (const command of commands) {
      // the guide shows how to take a stitch in two places
      const replacing = command.startsWith('library take') ? ' --replace' : '';
      const { status, stderr } = await run(`${command}${replacing}`);
      if (status !== 0) failed.push(`${command}: ${stderr}`);
    }
    expect(failed).toEqual([]);
  }, 240_000);

  it('a drawing is taken as the file that stands beside it', () => {
    expect(inLibrary('stitches/my-curl.json')).toBe(taken.text);
  });

  it('all that it writes is sound', async () => {
    const { status, stdout } = await run('library check');
    expect([status, stdout]).toEqual([0, expect.stringContaining('6 files checked, 0 with mistakes')]);
  }, 120_000);

  it('what is laid and drawn beneath a treatment can be written so', async () => {
    const parts = [...guide.matchAll(/^- \*\*(laid|guide)\*\*[^`]*`(\{.*?\})`/gm)];
    expect(parts).toHaveLength(2);
    for (const [, name, part] of parts) {
      const text = treatment.text.replace(/\n\}\s*$/, `,\n  "${name}": ${part}\n}`);
      expect((await checkTreatmentFile(text, name)).map(({ message }) => message)).toEqual([]);
    }
  });
});
