import { existsSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contents, newFolder, removeFolder, seamwright } from './run-cli.js';

const folder = newFolder();
const at = (...names: string[]) => join(folder, ...names);
const run = (...words: string[]) => seamwright(folder, ...words, '--library', 'own');
afterAll(() => removeFolder(folder));

const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40">
  <line id="seam" x1="5" y1="20" x2="11" y2="20"/>
  <line id="arm" x1="5" y1="20" x2="5" y2="15"/><line passes="0" x1="5" y1="15" x2="5" y2="20"/>
  <line id="heading" x1="5" y1="20" x2="11" y2="20"/></svg>`;
const block = `<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="40mm" viewBox="0 0 90 40"><path d="M5 20H85" fill="none" stroke="#000"/></svg>`;

beforeAll(() => {
  writeFileSync(at('one.svg'), drawing);
  writeFileSync(at('block.svg'), block);
});

describe("a maker's own library", () => {
  it('gets a copy to vary, which then stands before the built-in one', async () => {
    expect((await run('library', 'copy', 'Feather')).status).toBe(0);
    const file = at('own', 'stitches', 'feather.json');
    const record = JSON.parse(readFileSync(file, 'utf8'));
    writeFileSync(file, JSON.stringify({ ...record, title: 'Grandmother feather' }));
    const { stdout } = await run('stitches', '--json');
    const feather = JSON.parse(stdout).stitches.find(({ name }: { name: string }) => name === 'feather');
    expect(feather).toMatchObject({ title: 'Grandmother feather', from: 'personal', standsBefore: true });
    expect((await run('stitches')).stdout).toMatch(
      /feather +Grandmother feather .*yours, before the built-in one/,
    );
    expect((await run('dress', 'block.svg', '--stitch', 'feather')).stdout).toContain('Grandmother feather');
  });

  it('is found by the environment too', async () => {
    process.env.SEAMWRIGHT_LIBRARY = 'own';
    const { stdout } = await seamwright(folder, 'stitches', 'feather');
    delete process.env.SEAMWRIGHT_LIBRARY;
    expect(stdout).toContain('Grandmother feather');
  });

  it('takes a stitch from a drawing and sews it', async () => {
    expect((await run('library', 'take', 'one.svg', 'my-blanket')).status).toBe(0);
    expect((await run('swatch', 'my blanket', '--out', 'x.dst')).status).toBe(0);
    expect(existsSync(at('x.dst'))).toBe(true);
  });

  it('saves the treatment of a seam, to be used on another block', async () => {
    await run('dress', 'block.svg', '--stitch', 'cretan', '--width', '7', '--out', 'a.dressing.json');
    expect((await run('library', 'save', 'a.dressing.json', 'narrow-cretan', '--seam', '1')).status).toBe(0);
    const { status, stdout } = await run('dress', 'block.svg', '--treatment', 'narrow-cretan');
    expect(status).toBe(0);
    expect(stdout).toContain('Cretan, seam 1');
  });

  it('never replaces a file unasked, and changes nothing when it refuses', async () => {
    const before = contents(folder);
    const again = await run('library', 'copy', 'feather');
    expect(again.status).toBe(2);
    expect(again.stderr).toContain('is there already; choose another name, or say --replace');
    expect((await run('library', 'copy', 'fly', 'Bad Name')).stderr).toContain('is no name for a file');
    expect((await run('library', 'save', 'a.dressing.json', 'other', '--seam', '9')).stderr).toContain(
      'it has no treatment of seam 9',
    );
    expect(contents(folder)).toEqual(before);
    expect((await run('library', 'copy', 'feather', '--replace')).status).toBe(0);
  });

  it('a bad file never stops the others, and every mistake in it is told at once', async () => {
    mkdirSync(at('own', 'ornaments'), { recursive: true });
    writeFileSync(at('own', 'stitches', 'broken.json'), '{ "format": 1,');
    writeFileSync(at('own', 'ornaments', 'wrong.json'), '{ "format": 1, "title": 3, "famly": "x" }');
    const listed = await run('stitches');
    expect(listed.status).toBe(0);
    expect(listed.stdout).toContain('my-blanket');
    expect(listed.stdout).toMatch(/Left out:\n.*wrong\.json|Left out:\n.*broken\.json/);
    const checked = await run('library', 'check');
    expect(checked.status).toBe(1);
    expect(checked.stdout).toMatch(/broken\.json line 1 column 15/);
    expect(checked.stdout).toMatch(/wrong\.json title: it is 3/);
    expect(checked.stdout).toMatch(/wrong\.json famly: "famly" is not known here; did you mean "family"/);
    expect(checked.stdout).toMatch(/narrow-cretan\.json: sound/);
    const dressed = await run('dress', 'block.svg', '--stitch', 'feather');
    expect(dressed.status).toBe(0);
    expect(dressed.stderr).toContain('left out');
  });

  it('what is no file, or no folder, in it is told and hides nothing else', async () => {
    const odd = at('odd');
    mkdirSync(join(odd, 'stitches', 'folder.json'), { recursive: true });
    symlinkSync('circle.json', join(odd, 'stitches', 'circle.json'));
    writeFileSync(join(odd, 'stitches', '._fly.json'), 'left by a system');
    writeFileSync(join(odd, 'treatments'), 'no folder');
    const fly = readFileSync(new URL('../../motifs/stitches/fly.json', import.meta.url), 'utf8');
    writeFileSync(join(odd, 'stitches', 'My fly.json'), Buffer.from(`\uFEFF${fly}`, 'utf16le'));
    const { status, stdout } = await seamwright(folder, 'stitches', '--json', '--library', 'odd');
    expect(status).toBe(0);
    const { stitches, unread } = JSON.parse(stdout);
    expect(stitches.map(({ name }: { name: string }) => name)).toContain('My fly');
    expect(unread).toHaveLength(3);
    expect(unread.join('\n')).toMatch(
      /treatments: .*no folder[\s\S]*circle\.json: .*circle[\s\S]*folder\.json: is a folder/,
    );
    const checked = await seamwright(folder, 'library', 'check', '--library', 'odd');
    expect(checked.status).toBe(1);
    expect(checked.stdout).toContain('4 files checked');
    const file = await seamwright(folder, 'stitches', '--library', 'block.svg');
    expect([file.status, file.stderr]).toEqual([2, expect.stringContaining('is no folder')]);
  });

  it('a broken file that is asked for by name is answered with all its mistakes', async () => {
    const fly = JSON.parse(readFileSync(new URL('../../motifs/stitches/fly.json', import.meta.url), 'utf8'));
    mkdirSync(at('worn', 'stitches'), { recursive: true });
    for (const name of ['old-fly', 'older-fly']) {
      writeFileSync(
        at('worn', 'stitches', `${name}.json`),
        JSON.stringify({ ...fly, famly: 'x', sources: 0 }),
      );
    }
    const worn = (...words: string[]) => seamwright(folder, ...words, '--library', 'worn');
    const asked = await Promise.all([
      worn('swatch', 'old-fly'),
      worn('dress', 'block.svg', '--stitch', 'Old fly'),
    ]);
    for (const { status, stdout, stderr } of asked) {
      expect([status, stdout]).toEqual([2, '']);
      expect(stderr.trim().split('\n')).toEqual([
        expect.stringMatching(/^seamwright: worn\/stitches\/old-fly\.json sources: it is 0; /),
        expect.stringMatching(/^seamwright: worn\/stitches\/old-fly\.json famly: .*; did you mean "family"/),
      ]);
    }
  });

  it('what a killed save left beside is no stitch and stops no later one', async () => {
    mkdirSync(at('left', 'stitches'), { recursive: true });
    writeFileSync(at('left', 'stitches', '.seamwright-7-0.part'), '{ "format": 1,');
    const left = (...words: string[]) => seamwright(folder, ...words, '--library', 'left');
    expect((await left('library', 'copy', 'feather')).status).toBe(0);
    const listed = JSON.parse((await left('stitches', '--json')).stdout);
    expect(listed.unread).toEqual([]);
    expect((await left('library', 'check')).stdout).toContain('1 file checked');
  });

  it('a complaint about a library says what was typed, and no option that was not', async () => {
    writeFileSync(at('flat'), 'no folder');
    const copied = await seamwright(folder, 'library', 'copy', 'feather', '--library', 'flat');
    const inside = await seamwright(folder, 'library', 'copy', 'feather', '--library', 'flat/inside');
    expect([copied.status, inside.status]).toEqual([2, 2]);
    expect(copied.stderr).toContain('--library flat');
    expect(inside.stderr).toContain('flat/inside');
    expect(copied.stderr + inside.stderr).not.toContain('--out');
  });

  it('a treatment is told what its dictionary does not have, beside its other mistakes', async () => {
    const text = readFileSync(new URL('../../motifs/treatments/fly-knots.json', import.meta.url), 'utf8');
    const record = JSON.parse(text);
    record.titel = record.title;
    record.rows[0].parameters.widht = 3;
    record.accents[0].ornament = 'french-knott';
    writeFileSync(at('lost.json'), JSON.stringify(record));
    const { status, stdout } = await run('library', 'check', 'lost.json');
    expect(status).toBe(1);
    expect(stdout).toMatch(/titel is not known here/);
    expect(stdout).toMatch(/rows\[0\]: fly has no parameter "widht"; did you mean "width"/);
    expect(stdout).toMatch(/there is no ornament "french-knott"; did you mean "french-knot"/);
  });

  it('a drawing that is wrong in many places is told all of them', async () => {
    writeFileSync(
      at('wrong.svg'),
      drawing.replace('id="seam"', 'id="saem"').replace('passes="0"', 'pases="0"'),
    );
    const { status, stderr } = await run('library', 'take', 'wrong.svg', 'my-wrong');
    expect(status).toBe(2);
    expect(stderr.trim().split('\n')).toHaveLength(2);
    expect(stderr).toMatch(
      /wrong\.svg: no line is marked as the seam[\s\S]*line 3 \(line\): "pases" is not known/,
    );
  });
}, 60_000);
