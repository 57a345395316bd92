import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { readStitch } from '../../../src/stitches/check.js';
import { seamwright } from '../../cli/run-cli.js';
import { seriousIn } from '../axe.js';
import { atRest, isDressed, PATIENTLY } from '../browser.js';
import { describeInBrowser } from '../in-browser.js';
import { storedIn } from '../stored.js';

/** The titles of the stitches that are kept and not finished. */
const unfinished = async (page: Page): Promise<string[]> =>
  (await storedIn<{ record: { title: string }; isChanged: boolean }>(page, 'seamwright-stitches', 'bench'))
    .filter(({ isChanged }) => isChanged)
    .map(({ record }) => record.title);

describeInBrowser('the stitch bench', (open) => {
  it('makes a stitch of a copy: a point dragged, saved, worked on a seam, and its file read by the command line', async () => {
    const { page, faults } = await open();
    await page.getByRole('button', { name: 'Stitch bench' }).click();
    await page.getByLabel('Search stitches to copy').fill('briar');
    await page.getByRole('button', { name: 'Feather', exact: true }).click();
    const tip = page.locator('[data-name="tip"]');
    const box = await atRest(tip.locator('.shape'));
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 20, y);
    await page.mouse.move(x + 40, y);
    await page.mouse.up();
    await tip.focus();
    await page.keyboard.press('Shift+ArrowDown');
    const along = Number(await page.getByRole('textbox', { name: 'Along', exact: true }).inputValue());
    expect(along).toBeGreaterThan(0.5);
    expect(await page.getByRole('textbox', { name: 'Across', exact: true }).inputValue()).toBe(
      '-width / 2 - 0.1',
    );
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
    await page.locator('.table').focus();
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
  });

  it('says all that a file can: a second thread, copies, a join, names; the command line reads it and dresses with it', async () => {
    const { page, faults } = await open();
    await page.getByRole('button', { name: 'Stitch bench' }).click();
    await page.getByLabel('Search stitches to copy').fill('straight-stitch fans');
    await page.getByRole('button', { name: 'Straight-stitch fans', exact: true }).click();
    const side = page.locator('.bench-side');
    await page.locator('.sheet .mark').first().waitFor();

    await side.getByText('Threads (1)').click();
    await side.getByLabel('another thread').fill('knots');
    await side.getByLabel('another thread').press('Enter');
    await side.getByText('Threads (2)').waitFor();

    // a knot on the top of every fan, in the second thread, worked once for each
    await page.getByRole('button', { name: 'Knot', exact: true }).click();
    await page.locator('[data-name="tip[2]"]').press('Enter');
    await side.locator('.legs .what', { hasText: 'knot' }).click();
    const details = side.locator('.details');
    await details.getByLabel('Called').fill('bud');
    await details.getByLabel('Called').press('Enter');
    await details.getByLabel('At', { exact: true }).fill('tip[i]');
    await details.getByLabel('Times').fill('rays');
    await details.getByLabel('Times').press('Enter');
    await details.getByLabel('Thread').selectOption('knots');
    await details.getByLabel('Across').fill('1.5');
    await details.getByLabel('Across').press('Enter');
    await expect
      .poll(() => page.locator('.sheet circle.leg.knot').count(), PATIENTLY)
      .toBeGreaterThanOrEqual(5);

    // knots that are sewn one by one stand apart, and with them the repeats
    await side.getByLabel('repeats stand apart').check();

    await side.getByText('How repeats join (1)').click();
    await side.getByRole('button', { name: 'Part next from the next repeat' }).click();
    await side.getByText('How repeats join (0)').waitFor();
    await side.getByLabel('Point here').fill('next');
    await side.getByLabel('Point here').press('Tab');
    await side.getByLabel('Next one’s').fill('base');
    await side.getByLabel('Next one’s').press('Tab');
    await side.getByRole('button', { name: 'Join them' }).click();
    await side.getByText('How repeats join (1)').waitFor();

    await side.getByLabel('Other names').fill('budding fans, sunday fans');
    await side.getByLabel('Other names').press('Tab');
    await side.getByLabel('Title', { exact: true }).last().fill('Budding fans');
    await side.getByLabel('Title', { exact: true }).last().press('Enter');
    await side.getByText('budding-fans.json').waitFor();
    for (const fold of await side.locator('details').all())
      await fold.evaluate((element) => element.setAttribute('open', ''));
    expect(await seriousIn(page)).toEqual([]);
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.locator('.state', { hasText: /^saved/ }).waitFor();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Its file' }).click(),
    ]);
    const text = readFileSync(await download.path(), 'utf8');
    expect(JSON.parse(text)).toMatchObject({
      title: 'Budding fans',
      otherNames: ['budding fans', 'sunday fans'],
      threads: ['first', 'knots'],
      joins: { next: 'base' },
    });
    expect(JSON.parse(text).legs.at(-1)).toEqual({
      count: 'rays',
      legs: [{ name: 'bud', kind: 'knot', at: 'tip[i]', size: 1.5, thread: 'knots' }],
    });

    const folder = mkdtempSync(join(tmpdir(), 'seamwright-'));
    mkdirSync(join(folder, 'own', 'stitches'), { recursive: true });
    writeFileSync(join(folder, 'own', 'stitches', 'budding-fans.json'), text);
    writeFileSync(
      join(folder, 'block.svg'),
      '<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="60mm" viewBox="0 0 90 60"><path stroke="#000" fill="none" d="M5 30H85"/></svg>',
    );
    const checked = await seamwright(folder, 'library', 'check', '--library', 'own');
    expect([checked.stderr, checked.status]).toEqual(['', 0]);
    const dressed = await seamwright(
      folder,
      ...['dress', 'block.svg', '--library', 'own', '--stitch', 'budding-fans', '--json'],
    );
    expect(dressed.stderr).toBe('');
    const { stops, fits } = JSON.parse(dressed.stdout);
    expect(stops).toHaveLength(2);
    expect(fits[0]).toMatchObject({ stitch: 'budding-fans' });
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('keeps several stitches that are not finished, each by its name, over a reload', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'Stitch bench' }).click();
    const lay = async (wanted: string) => {
      await page.getByLabel('Search stitches to copy').fill(wanted);
      await page.getByRole('button', { name: wanted, exact: true }).click();
      await page.locator('.head .file', { hasText: `My ${wanted.toLowerCase()}` }).waitFor();
      await page.locator('.sheet .mark.hole').first().press('ArrowUp');
      await page.locator('.sheet .mark.hole').first().press('ArrowUp');
      await page.getByRole('button', { name: 'Undo' }).and(page.locator(':enabled')).waitFor();
      await expect.poll(() => unfinished(page), PATIENTLY).toContain(`My ${wanted.toLowerCase()}`);
    };
    const shelf = page.getByText('Another stitch');
    await lay('Feather');
    await shelf.click();
    await lay('Fly');
    await shelf.click();
    const open2 = page.locator('.start .own li');
    await open2.filter({ hasText: 'My feather' }).waitFor();
    expect(await open2.count()).toBe(1);

    await page.reload();
    await isDressed(page);
    await page.getByRole('button', { name: 'Stitch bench' }).click();
    await page.locator('.head .file', { hasText: 'My fly' }).waitFor();
    await shelf.click();
    await open2.filter({ hasText: 'My feather' }).locator('.what').click();
    await page.locator('.head .file', { hasText: 'My feather' }).waitFor();
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.locator('.state', { hasText: /^saved/ }).waitFor();
    await shelf.click();
    await open2.filter({ hasText: 'My fly' }).getByRole('button', { name: 'Throw away' }).click();
    await open2.filter({ hasText: 'My fly' }).waitFor({ state: 'detached' });
    // what is saved is among her own now, and no longer unfinished
    expect(await page.getByRole('heading', { name: 'Not finished' }).count()).toBe(0);
    await open2.filter({ hasText: 'my-feather.json' }).waitFor();
    await page.context().close();
  });

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
  });
});
