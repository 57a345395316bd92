import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { piecedPanel } from '../fixtures/pieced-panel.js';
import { give, isDressed } from './browser.js';
import { describeInBrowser } from './in-browser.js';

/** All that is said on the page, seen or read aloud, that is a length in millimeters. */
const inMillimeters = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const said: string[] = [];
    for (const one of Array.from(document.querySelectorAll('body *'))) {
      // the choice of the unit itself, and the unit that a stitch's file is written in
      if (one.closest('script, style, template, option[value="mm"]')) continue;
      for (const name of ['aria-label', 'aria-valuetext', 'title', 'placeholder', 'alt'])
        said.push(one.getAttribute(name) ?? '');
      for (const node of Array.from(one.childNodes))
        if (node.nodeType === Node.TEXT_NODE) said.push(node.textContent!);
    }
    return said.filter((text) => /\d\s*(mm|millimet)/i.test(text) || /^\s*mm\s*$/.test(text));
  });
const openAll = (page: Page) =>
  page.locator('details:not(.take-away)').evaluateAll((all) => {
    for (const one of all) (one as HTMLDetailsElement).open = true;
  });

describeInBrowser('where inches are chosen', (open) => {
  it('no length on any screen is told in millimeters', async () => {
    const { page } = await open();
    await page.getByLabel('Measured in').selectOption('inch');
    const told: Record<string, string[]> = {};
    const look = async (where: string) => {
      if (where !== 'the bench') await isDressed(page);
      await openAll(page);
      told[where] = await inMillimeters(page);
    };
    await page.locator('.findings button').first().waitFor();
    await page.getByLabel('Put a figure on the block').selectOption('daisy');
    await page.getByRole('button', { name: 'Keep a place clear' }).first().click();
    await look('the block');
    await page.locator('.table').focus();
    await page.keyboard.press('ArrowRight');
    await openAll(page);
    await page.getByLabel('Add a row of').selectOption('blanket');
    await page.getByLabel('Add an accent').selectOption('daisy');
    await page.getByLabel('It follows').selectOption('wave');
    await look('a seam');
    expect(await page.locator('.has').textContent()).toMatch(/repeats of [\d.]+″/);
    await page.getByRole('button', { name: 'Done' }).click();

    await page.getByRole('button', { name: 'Draw seams' }).click();
    await page.locator('.draw-more .aside', { hasText: 'lines drawn' }).waitFor();
    await page.locator('canvas.board').focus();
    await page.keyboard.press('ArrowRight');
    await page
      .getByRole('button', { name: /^Point \d+ of/ })
      .first()
      .waitFor();
    await look('the board');
    await page.keyboard.press('Delete');
    await page.getByRole('heading', { name: 'Would miss their seam' }).waitFor();
    await look('a treatment without its seam');
    await page.getByRole('radio', { name: 'Straight' }).check({ force: true });
    await page.locator('canvas.board').focus();
    await page.keyboard.press('ArrowRight');
    await look('the cross of the board');
    await page.getByRole('button', { name: 'Done' }).click();

    await page.getByRole('button', { name: 'Stitch bench' }).click();
    await page.getByLabel('Search stitches to copy').fill('briar');
    await page.getByRole('button', { name: 'Feather', exact: true }).click();
    await page.locator('[data-name="tip"]').press('ArrowRight');
    await page.locator('.bench-found').waitFor();
    await look('the bench');
    await page.getByRole('button', { name: 'To the block' }).click();

    await give(page, { name: 'pieced.dst', text: Buffer.from(piecedPanel()) });
    await page.locator('.findings button').first().waitFor();
    await look('a stitch file');
    expect(told).toEqual(Object.fromEntries(Object.keys(told).map((where) => [where, []])));
    await page.context().close();
  });
});
