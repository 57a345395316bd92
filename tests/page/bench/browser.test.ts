import { copyFileSync, mkdirSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { readStitch } from '../../../src/stitches/check.js';
import { seamwright } from '../../cli/run-cli.js';
import { seriousIn } from '../axe.js';
import { isDressed } from '../browser.js';
import { describeInBrowser } from '../in-browser.js';

describeInBrowser('the stitch bench', (open) => {
  it('makes a stitch of a copy: a point dragged, saved, worked on a seam, and its file read by the command line', async () => {
    const { page, faults } = await open();
    await page.getByRole('button', { name: 'Stitch bench' }).click();
    await page.getByLabel('Search stitches to copy').fill('briar');
    await page.getByRole('button', { name: 'Feather', exact: true }).click();
    const tip = page.locator('[data-name="tip"]');
    const box = (await tip.locator('.shape').boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 20, y);
    await page.mouse.move(x + 40, y);
    await page.mouse.up();
    await tip.focus();
    await page.keyboard.press('Shift+ArrowDown');
    const along = Number(await page.getByRole('textbox', { name: 'Along' }).inputValue());
    expect(along).toBeGreaterThan(0.5);
    expect(await page.getByRole('textbox', { name: 'Across' }).inputValue()).toBe('-width / 2 - 0.1');
    expect(await seriousIn(page)).toEqual([]);

    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.locator('.state', { hasText: /^saved/ }).waitFor();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Its file' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('my-feather.json');
    const path = await download.path();
    const stitch = await readStitch(readFileSync(path, 'utf8'), 'my-feather');
    const node = stitch.build({}).seats.find(({ name }) => name === 'tip')!;
    expect(node.u).toBeCloseTo(along, 6);
    expect(node.v).toBeCloseTo(-4.1, 6);

    await page.reload();
    await isDressed(page);
    await page.locator('canvas.table').focus();
    await page.keyboard.press('ArrowRight');
    await page.getByRole('button', { name: 'My feather' }).click();
    await isDressed(page);
    expect(await page.locator('.panel .has').first().textContent()).toContain('My feather');

    const folder = mkdtempSync(join(tmpdir(), 'seamwright-'));
    mkdirSync(join(folder, 'own', 'stitches'), { recursive: true });
    copyFileSync(path, join(folder, 'own', 'stitches', 'my-feather.json'));
    const { status, stderr } = await seamwright(folder, 'library', 'check', '--library', 'own');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(faults).toEqual([]);
    await page.context().close();
  }, 60_000);

  it('takes in what is sound and answers a wrong file with its place and what would be right', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'Stitch bench' }).click();
    const sound = readFileSync(join(import.meta.dirname, '../../../motifs/stitches/fly.json'), 'utf8');
    const given = { 'torn.json': sound.replace('"symmetry": "', '"symmetry": "un'), 'my-fly.json': sound };
    await page.locator('.start input[type=file]').setInputFiles(
      Object.entries(given).map(([name, text]) => ({
        name,
        mimeType: 'application/json',
        buffer: Buffer.from(text),
      })),
    );
    const said = await page.locator('.complaint').textContent();
    expect(said).toContain('torn.json symmetry');
    expect(said).toContain('one of "none", "mirror", "glide"');
    await page.locator('.own .what', { hasText: 'my-fly.json' }).waitFor();
    await page.context().close();
  }, 60_000);
});
