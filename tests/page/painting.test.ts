import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { isDressed, PATIENTLY } from './browser.js';
import { describeInBrowser } from './in-browser.js';
import { keptDressings, storedIn } from './stored.js';

/** What is seen of the table once nothing changes any more. */
async function atRest(page: Page): Promise<Buffer> {
  await isDressed(page);
  await page.mouse.move(2, 2);
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.waitForFunction((wide) => {
    const table = document.querySelector('.table');
    const canvas = table?.querySelector('canvas');
    if (innerWidth !== wide || !table || !canvas || table.getAttribute('aria-busy') !== 'false') return false;
    return canvas.style.transform === '' && Math.abs(canvas.offsetWidth - table.clientWidth) < 1;
  }, page.viewportSize()!.width);
  return pictureOf(page);
}

/** The painting alone, without the handles that lie over it. */
const pictureOf = (page: Page): Promise<Buffer> =>
  page.locator('.table').screenshot({ style: '.on-table { visibility: hidden }' });

/** The same, when the whole table is painted anew. */
async function paintedAnew(page: Page): Promise<Buffer> {
  const size = page.viewportSize()!;
  await page.setViewportSize({ ...size, width: size.width - 120 });
  await atRest(page);
  await page.setViewportSize(size);
  return atRest(page);
}

/** Whether the picture of the work as it is lies in the browser. */
async function isPictureKept(page: Page): Promise<boolean> {
  const [now] = await keptDressings(page);
  const pictures = await storedIn<{ of: string }>(page, 'seamwright pictures', 'pictures');
  return pictures.some(({ of }) => JSON.stringify(JSON.parse(of)[0]) === JSON.stringify(now));
}

async function touch(page: Page, seam: number): Promise<void> {
  await page.locator('.table').focus();
  for (let i = 0; i < seam; i++) await page.keyboard.press('ArrowRight');
  await page.locator('.panel h2', { hasText: `Seam ${seam}` }).waitFor();
}

/** Drags the handle of the touched seam's size and leaves it elsewhere. */
async function dragSize(page: Page): Promise<void> {
  const { x, y, width, height } = (await page
    .getByRole('slider', { name: 'Size of the stitch' })
    .boundingBox())!;
  const [startX, startY] = [x + width / 2, y + height / 2];
  await page.mouse.move(startX, startY);
  await page.mouse.down();
  for (const by of [4, 9, 14, 6, -2, 3, 8, 11]) {
    await page.mouse.move(startX + by, startY + by);
    await page.waitForTimeout(60);
  }
  await page.mouse.up();
}

describeInBrowser('the painting on the table', (open, file) => {
  it('is, after a seam that lies under others was dragged, the same dot for dot as one painted from nothing', async () => {
    const { page } = await open();
    await touch(page, 6);
    const before = await atRest(page);
    await dragSize(page);
    const dragged = await atRest(page);
    expect(dragged.equals(before)).toBe(false);
    expect((await paintedAnew(page)).equals(dragged)).toBe(true);

    // with the picture that was kept, and with the one that the core makes of the work
    await expect.poll(() => isPictureKept(page), PATIENTLY).toBe(true);
    for (const isKept of [true, false]) {
      if (!isKept) await page.evaluate(() => void indexedDB.deleteDatabase('seamwright pictures'));
      await page.reload();
      await isDressed(page);
      await touch(page, 6);
      expect((await atRest(page)).equals(dragged)).toBe(true);
    }
    await page.context().close();
  });

  it('goes along when the block is moved, and is as sharp there as one painted from nothing', async () => {
    const { page } = await open();
    const before = await atRest(page);
    await page.mouse.move(300, 300);
    await page.mouse.down();
    await page.mouse.move(340, 330, { steps: 6 });
    await page.mouse.up();
    await page.mouse.wheel(0, -400);
    const moved = await atRest(page);
    expect(moved.equals(before)).toBe(false);
    expect((await paintedAnew(page)).equals(moved)).toBe(true);
    await page.context().close();
  });

  it('is the picture that the core makes from the first moment on', async () => {
    const { page } = await open();
    await page.waitForFunction(() => performance.getEntriesByName('seamwright first picture').length > 0);
    const first = await pictureOf(page);
    // the offers of a touched seam come from the core: then it has dressed the block itself
    await touch(page, 1);
    await page.waitForFunction(() =>
      Array.from(document.querySelectorAll<HTMLCanvasElement>('.card canvas')).some(({ width }) => width > 1),
    );
    await page.getByRole('button', { name: 'Done' }).click();
    expect((await atRest(page)).equals(first)).toBe(true);
    await page.context().close();
  });

  it('comes back when the bench was laid over it', async () => {
    const { page } = await open();
    const before = await atRest(page);
    await page.getByRole('button', { name: 'Stitch bench' }).click();
    await page.locator('.table').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'To the block' }).click();
    await page.locator('.table').waitFor();
    expect((await atRest(page)).equals(before)).toBe(true);
    await page.context().close();
  });

  it('lies as it is to where the screen has two dots to a pixel', async () => {
    const { page } = await open();
    const two = await page
      .context()
      .browser()!
      .newContext({
        viewport: { width: 1440, height: 900 },
        deviceScaleFactor: 2,
      });
    await page.context().close();
    const tab = await two.newPage();
    await tab.goto(`file://${file()}`);
    await isDressed(tab);
    await touch(tab, 2);
    await dragSize(tab);
    const dragged = await atRest(tab);
    expect((await paintedAnew(tab)).equals(dragged)).toBe(true);
    await two.close();
  });
});
