import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { Dressing } from '../../src/formats/dressing.js';
import { isDressed, PATIENTLY, taken } from './browser.js';
import { describeInBrowser } from './in-browser.js';

const ornaments = async (page: Page) => {
  const { path } = await taken(page, 'The work itself');
  return (JSON.parse(readFileSync(path, 'utf8')) as Dressing).ornaments ?? [];
};
const seen = async (page: Page): Promise<string> => {
  await isDressed(page);
  await page.locator('.table[aria-busy="false"]').waitFor();
  return (await page.locator('.table').screenshot()).toString('base64');
};

describeInBrowser('a figure in a patch', (open) => {
  it('is turned, put in another thread and sized by hand, each seen at once, each undone by itself', async () => {
    const { page, faults } = await open();
    await page.getByLabel('Put a figure on the block').selectOption('fan');
    const fan = page.locator('.standing').first();
    await fan.getByText('Turn and thread').click();
    // the picture under the pointer is that of a table alone
    await page.mouse.move(2, 2);
    const looks = [await seen(page)];
    const does = async (how: () => Promise<unknown>) => {
      await how();
      await expect.poll(() => seen(page), PATIENTLY).not.toBe(looks.at(-1));
      looks.push(await seen(page));
    };
    await does(() => fan.getByRole('slider', { name: 'Turned' }).fill('45'));
    await does(() => fan.getByRole('radio').nth(2).check({ force: true }));
    await does(() => fan.getByRole('slider', { name: 'Fan' }).press('ArrowRight'));
    expect(await ornaments(page)).toMatchObject([{ ornament: 'fan', turn: 45, thread: 2, pinned: true }]);
    expect(await fan.getByRole('radio').nth(2).isChecked()).toBe(true);
    for (const before of looks.slice(0, -1).reverse()) {
      await page.locator('.table').focus();
      await page.keyboard.press('Control+z');
      await page.evaluate(() => (document.activeElement as HTMLElement).blur());
      await expect.poll(() => seen(page), PATIENTLY).toBe(before);
    }
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
