import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { seamwright } from '../cli/run-cli.js';
import { PANEL_STOPS, piecedPanel } from '../fixtures/pieced-panel.js';
import { seriousIn } from './axe.js';
import { give, isDressed, openTab, PATIENTLY, taken } from './browser.js';
import { describeInBrowser } from './in-browser.js';
import { keptDressings, keptWidths } from './stored.js';

const cross = `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="100mm" viewBox="0 0 120 100">
  <rect fill="#6d4670" x="0" y="0" width="60" height="100"/><rect fill="#d9c7a0" x="60" y="0" width="60" height="50"/>
  <rect fill="#3f8078" x="60" y="50" width="60" height="50"/></svg>`;

describeInBrowser('the page', (open, file) => {
  it('opens from disk with the demo block dressed, whole in one file of less than 1.5 MB, and asks for nothing else', async () => {
    const { page, asked, faults } = await open();
    expect(readFileSync(file()).length).toBeLessThan(1_500_000);
    expect(await page.locator('.facts').textContent()).toMatch(/\d+ min11 stops/);
    expect(asked.filter((url) => !/^(file|blob|data):/.test(url))).toEqual([]);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('sews what the command line sews: a drawing is dropped, a seam changed, and the stitch file is byte for byte the same', async () => {
    const { page } = await open();
    await give(page, { name: 'cross.svg', text: cross });
    await page.locator('.table').focus();
    await page.keyboard.press('ArrowRight');
    await page.getByLabel('Size', { exact: true }).fill('7');
    await isDressed(page);
    const folder = mkdtempSync(join(tmpdir(), 'seamwright-'));
    const dressing = await taken(page, 'The work itself');
    expect(dressing.name).toBe('cross.dressing.json');
    copyFileSync(dressing.path, join(folder, dressing.name));
    const sewn = await taken(page, 'Stitch file');
    expect(sewn.name).toBe('cross.dst');
    const { stderr, status } = await seamwright(folder, 'dress', dressing.name, '--out', 'cli.dst');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(readFileSync(sewn.path).equals(readFileSync(join(folder, 'cli.dst')))).toBe(true);
    await page.context().close();
  });

  it('takes a stitch file without asking for stop numbers, shows what each stop was taken for, and takes a word on it', async () => {
    const { page } = await open();
    await give(page, { name: 'pieced.dst', text: Buffer.from(piecedPanel()) });
    const roles = page.locator('section', { hasText: 'What the file sews' }).locator('.what select');
    expect(await roles.count()).toBe(PANEL_STOPS.length);
    const before = await roles.evaluateAll((all) => all.map((one) => (one as HTMLSelectElement).value));
    expect(before).toContain('seam');
    const first = before.indexOf('placement');
    await roles.nth(first).selectOption('other');
    await isDressed(page);
    expect(await roles.nth(first).inputValue()).toBe('other');
    expect(await page.locator('.stops .locked').count()).toBe(PANEL_STOPS.length);
    await page.context().close();
  });

  it('brings back the same work when it is loaded again in the middle of an edit, and does not mix up two tabs', async () => {
    const { page } = await open();
    await give(page, { name: 'cross.svg', text: cross });
    await page.locator('.table').focus();
    await page.keyboard.press('ArrowRight');
    await page.getByLabel('Size', { exact: true }).fill('9');
    await expect.poll(() => keptWidths(page), PATIENTLY).toEqual([9]);
    await page.reload();
    await isDressed(page);
    expect(await page.locator('.file').textContent()).toBe('cross.svg');
    await page.locator('.table').focus();
    await page.keyboard.press('ArrowRight');
    expect(await page.getByLabel('Size', { exact: true }).inputValue()).toBe('9');

    const other = await openTab(await page.context().newPage(), file());
    expect(await other.page.locator('.file').textContent()).toBe('panel.svg');
    await other.page.close();
    await page.reload();
    await isDressed(page);
    expect(await page.locator('.file').textContent()).toBe('cross.svg');
    await page.context().close();
  });

  it('keeps nothing of the demo block until it is changed, and then all of it', async () => {
    const { page } = await open();
    await page.reload();
    await isDressed(page);
    const kept = async () => (await keptDressings(page)).length;
    expect(await kept()).toBe(0);
    await page.getByRole('button', { name: 'Mix again' }).click();
    await expect.poll(kept, PATIENTLY).toBe(1);
    await page.context().close();
  });

  it('takes away sheets and pictures that are what they are called', async () => {
    const { page } = await open();
    const starts = async (title: string) =>
      readFileSync((await taken(page, title)).path)
        .subarray(0, 5)
        .toString('latin1');
    expect(await starts('Sew sheet')).toBe('%PDF-');
    expect(await starts('Transfer pattern')).toBe('%PDF-');
    expect(await starts('Picture')).toBe('\x89PNG\r');
    expect(await starts('Drawing')).toBe('<svg ');
    expect(await starts('Sampler')).toBe('LA:sa');
    await page.context().close();
  });

  it('shows how dense the work is, and leads from a finding to its place', async () => {
    const { page } = await open();
    const looks = async () => (await page.locator('.table').screenshot()).toString('base64');
    const asThread = await looks();
    await page.getByLabel('What is looked at').selectOption('density');
    await expect.poll(looks, PATIENTLY).not.toBe(asThread);
    await page.locator('.findings button', { hasText: 'seam' }).first().click();
    await page.locator('.panel h2', { hasText: 'Seam' }).waitFor();
    await page.context().close();
  });

  it('moves a figure by keys and takes it off again', async () => {
    const { page } = await open();
    await page.getByLabel('Put a figure on the block').selectOption('daisy');
    const handle = page.getByRole('button', { name: /daisy, figure/ });
    await handle.focus();
    const left = () => handle.evaluate((one: HTMLElement) => Number.parseFloat(one.style.left));
    const before = await left();
    await page.keyboard.press('ArrowLeft');
    await expect.poll(left, PATIENTLY).toBeLessThan(before);
    await page.keyboard.press('Delete');
    await expect.poll(() => handle.count(), PATIENTLY).toBe(0);
    await page.context().close();
  });

  it('undoes and redoes step by step; what was dragged is one step', async () => {
    const { page } = await open();
    const facts = () => page.locator('.facts').textContent();
    const first = await facts();
    await page.getByRole('button', { name: 'Mix again' }).click();
    await expect.poll(facts, PATIENTLY).not.toBe(first);
    await isDressed(page);
    const mixed = await facts();
    await page.keyboard.press('Control+z');
    await expect.poll(facts, PATIENTLY).toBe(first);
    await page.keyboard.press('Control+Shift+z');
    await expect.poll(facts, PATIENTLY).toBe(mixed);
    await page.context().close();
  });

  it('can be worked by keyboard alone: from seam to seam, another stitch on it, and pinned by that', async () => {
    const { page } = await open();
    for (let i = 0; i < 12; i++) {
      await page.keyboard.press('Tab');
      if (await page.locator('.table:focus').count()) break;
    }
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.closest('.panel') !== null)).toBe(true);
    await page.getByLabel('Search stitches').focus();
    await page.keyboard.type('mossoul');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Herringbone');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.has strong').textContent(), PATIENTLY).toBe('Herringbone');
    expect(await page.locator('.has').textContent()).toMatch(/[\d.]+ repeats of [\d.]+ mm/);
    expect(await page.getByLabel('Pinned').isChecked()).toBe(true);
    await page.context().close();
  });

  it('has nothing that an accessibility scan calls serious, light or dark', async () => {
    const { page } = await open();
    for (const colorScheme of ['light', 'dark'] as const) {
      // colors that are still on their way to others are no colors to judge
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      expect(await seriousIn(page)).toEqual([]);
      await page.locator('.table').focus();
      await page.keyboard.press('ArrowRight');
      expect(await seriousIn(page)).toEqual([]);
      await page.keyboard.press('Escape');
    }
    await page.context().close();
  });

  it('runs nothing that a drawing holds, and asks for nothing that it names', async () => {
    const { page, asked } = await open();
    const before = asked.length;
    const hostile = cross
      .replace('<svg ', '<svg onload="document.title=\'ran\'" xmlns:xlink="http://www.w3.org/1999/xlink" ')
      .replace(
        '<rect ',
        `<script>document.title='ran'</script><style>@import url(https://example.org/a.css);</style>
         <image href="https://example.org/a.png" width="9" height="9"/>
         <foreignObject width="9" height="9"><img xmlns="http://www.w3.org/1999/xhtml" src="https://example.org/b.png" onerror="document.title='ran'"/></foreignObject>
         <rect onclick="document.title='ran'" style="filter:url(https://example.org/f.svg#f)" `,
      );
    await give(page, { name: 'hostile.svg', text: hostile });
    await taken(page, 'Picture');
    expect(await page.title()).toBe('Seamwright');
    expect(asked.slice(before).filter((url) => !/^(blob|data):/.test(url))).toEqual([]);
    await page.context().close();
  });

  it('refuses a drawing that has its figure from elsewhere', async () => {
    const { page, asked } = await open();
    const before = asked.length;
    const borrowed = cross.replace('<rect ', '<use href="https://example.org/a.svg#x"/><rect ');
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'borrowed.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(borrowed) });
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('alert').textContent()).toContain('borrowed.svg line 2');
    expect(asked.slice(before).filter((url) => !/^(blob|data):/.test(url))).toEqual([]);
    await page.context().close();
  });

  it('refuses a bomb of entities with a reason, and leaves the work as it was', async () => {
    const { page } = await open();
    const levels = [...'bcdefghij'].map(
      (name, i) => `<!ENTITY ${name} "${`&${'abcdefghij'[i]};`.repeat(10)}">`,
    );
    const bomb = `<!DOCTYPE svg [<!ENTITY a "M0 0">${levels.join('')}]><svg xmlns="http://www.w3.org/2000/svg"><path d="&j;"/></svg>`;
    writeFileSync(join(tmpdir(), 'bomb.svg'), bomb);
    await page.locator('input[type=file]').setInputFiles(join(tmpdir(), 'bomb.svg'));
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('alert').textContent()).toContain('bomb.svg');
    expect(await page.locator('.file').textContent()).toBe('panel.svg');
    await page.context().close();
  });
});
