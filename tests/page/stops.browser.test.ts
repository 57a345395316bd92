import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { PANEL_STOPS, piecedPanel } from '../fixtures/pieced-panel.js';
import { atRest, give, isDressed, PATIENTLY, taken } from './browser.js';
import { describeInBrowser } from './in-browser.js';
import { keptDressings } from './stored.js';

const titles = (page: Page): Promise<string[]> =>
  page
    .locator('.stops > li > button.what')
    .evaluateAll((all) => all.map((one) => one.firstChild!.textContent!));
const seen = async (page: Page): Promise<string> => {
  await isDressed(page);
  await page.locator('.table[aria-busy="false"]').waitFor();
  return (await page.locator('.table').screenshot()).toString('base64');
};
const stitchFile = async (page: Page): Promise<string> => {
  await isDressed(page);
  return readFileSync((await taken(page, 'Stitch file')).path, 'base64');
};

describeInBrowser('the order of sewing', (open) => {
  it('is changed by dragging a stop and by keys, is undone, and the hand stays on what it moves', async () => {
    const { page } = await open();
    const was = await titles(page);
    const grip = page.locator('.stops .grip').first();
    await grip.scrollIntoViewIfNeeded();
    const from = await atRest(grip);
    const to = (await page.locator('.stops > li').nth(2).boundingBox())!;
    await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(to.x + 40, to.y + to.height / 2, { steps: 4 });
    expect(await page.locator('.stops > li.over').count()).toBe(1);
    await page.mouse.up();
    const dragged = [was[1], was[2], was[0], ...was.slice(3)];
    await expect.poll(() => titles(page), PATIENTLY).toEqual(dragged);
    expect(await page.locator('.stops > li.over').count()).toBe(0);

    const first = page.getByRole('button', { name: `Move ${dragged[0]}:` });
    await first.focus();
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => titles(page), PATIENTLY).toEqual([dragged[1], dragged[0], ...dragged.slice(2)]);
    expect(await first.evaluate((one) => one === document.activeElement)).toBe(true);
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => titles(page), PATIENTLY).toEqual(dragged);
    for (let k = 0; k < 3; k++) await page.keyboard.press('Control+z');
    await expect.poll(() => titles(page), PATIENTLY).toEqual(was);
    await page.context().close();
  });

  it('hides a stop from the eye and not from the machine', async () => {
    const { page } = await open();
    const [title] = await titles(page);
    const [whole, sewn] = [await seen(page), await stitchFile(page)];
    await page.getByRole('button', { name: `Hide ${title}` }).click();
    await expect.poll(() => seen(page), PATIENTLY).not.toBe(whole);
    expect(await stitchFile(page)).toBe(sewn);
    await page.getByRole('button', { name: `Show ${title}` }).click();
    await expect.poll(() => seen(page), PATIENTLY).toBe(whole);
    await page.context().close();
  });

  it('merges stops of one thread, or all, and shows fewer halts', async () => {
    const { page } = await open();
    const count = async () => (await titles(page)).length;
    expect(await count()).toBe(11);
    await page.getByLabel('A stop for').selectOption('thread');
    await expect.poll(count, PATIENTLY).toBeLessThan(11);
    await isDressed(page);
    const merged = await count();
    expect(await page.locator('.facts').textContent()).toContain(`${merged} stops`);
    await page.getByLabel('A stop for').selectOption('all');
    await expect.poll(count, PATIENTLY).toBe(1);
    await page.context().close();
  });

  it('recolors a thread wherever it is used, and sews the same', async () => {
    const { page } = await open();
    const sewn = await stitchFile(page);
    const whole = await seen(page);
    const color = page.locator('.stops .thread-color').first();
    const name = await color.getAttribute('aria-label');
    const alike = page.getByLabel(name!, { exact: true });
    await color.fill('#118833');
    await expect.poll(() => seen(page), PATIENTLY).not.toBe(whole);
    for (const one of await alike.all()) expect(await one.inputValue()).toBe('#118833');
    await expect
      .poll(async () => (await keptDressings(page))[0]?.threads.map(({ hex }) => hex), PATIENTLY)
      .toContain('#118833');
    expect(await stitchFile(page)).toBe(sewn);
    await page.context().close();
  });

  it('marks and locks what came with the block, each with its picture, folded together before the new stops', async () => {
    const { page } = await open();
    await give(page, { name: 'pieced.dst', text: Buffer.from(piecedPanel()) });
    const order = page.locator('section', { has: page.getByRole('heading', { name: 'Order of sewing' }) });
    const locked = order.locator('.locked');
    expect(await locked.count()).toBe(PANEL_STOPS.length);
    expect(await locked.locator('button, input').count()).toBe(0);
    expect(await locked.first().isVisible()).toBe(false);
    await order.locator('summary', { hasText: 'came with the block' }).first().click();
    await locked.first().waitFor();
    // what each was taken for is told beside it
    expect(await locked.first().textContent()).toBe('Stop 1, placement maplocked');
    expect(await locked.locator('canvas').count()).toBe(PANEL_STOPS.length);
    await expect
      .poll(
        () =>
          locked
            .locator('canvas')
            .first()
            .evaluate((one) => (one as HTMLCanvasElement).width),
        PATIENTLY,
      )
      .toBeGreaterThan(1);
    await page.context().close();
  });
});
