import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { give, isDressed, openTab, PATIENTLY } from './browser.js';
import { describeInBrowser } from './in-browser.js';
import { keptWidths, storedIn } from './stored.js';

const cross = `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="100mm" viewBox="0 0 120 100">
  <rect fill="#6d4670" x="0" y="0" width="60" height="100"/><rect fill="#d9c7a0" x="60" y="0" width="60" height="50"/>
  <rect fill="#3f8078" x="60" y="50" width="60" height="50"/></svg>`;

async function touchFirst(page: Page): Promise<void> {
  await page.locator('.table').focus();
  await page.keyboard.press('ArrowRight');
}
const size = (page: Page) => page.getByLabel('Size', { exact: true });
const fileOnBench = (page: Page) => page.locator('.bench-side').getByText(/^my-feather[-\d]*\.json$/);

async function layFeather(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Stitch bench' }).click();
  await page.getByLabel('Search stitches to copy').fill('briar');
  await page.getByRole('button', { name: 'Feather', exact: true }).click();
  await page.locator('[data-name="tip"]').waitFor();
}
async function moveTip(page: Page, times: number): Promise<void> {
  const tip = page.locator('[data-name="tip"]');
  for (let k = 0; k < times; k++) await tip.press('Shift+ArrowRight');
}
const along = async (page: Page): Promise<number> => {
  await page.locator('[data-name="tip"]').press('Enter');
  return Number(await page.getByRole('textbox', { name: 'Along', exact: true }).inputValue());
};
/** How far along its seam the tip lies in each unfinished stitch that is kept. */
const keptTips = async (page: Page): Promise<number[]> =>
  (await storedIn<{ record: { points: { tip: [number, number] } } }>(page, 'seamwright-stitches', 'bench'))
    .map(({ record }) => record.points.tip[0])
    .sort((a, b) => a - b);

describeInBrowser('nothing is lost', (open, file) => {
  it('in a crash in the middle of an edit: what is held in the hand is there when the page is opened again', async () => {
    const { page } = await open();
    const context = page.context();
    await give(page, { name: 'cross.svg', text: cross });
    await touchFirst(page);
    const handle = page.getByRole('slider', { name: 'Size of the stitch' });
    const { x, y, width, height } = (await handle.boundingBox())!;
    const was = await size(page).inputValue();
    await page.mouse.move(x + width / 2, y + height / 2);
    await page.mouse.down();
    await page.mouse.move(x + width / 2 + 12, y + height / 2 + 12, { steps: 4 });
    await expect.poll(() => size(page).inputValue(), PATIENTLY).not.toBe(was);
    // kept as it happens: the handle is still held
    const held = Number(await size(page).inputValue());
    await expect.poll(() => keptWidths(page), PATIENTLY).toEqual([held]);
    const debug = await context.newCDPSession(page);
    const crashed = page.waitForEvent('crash');
    debug.send('Page.crash').catch(() => null);
    await crashed;

    const again = await openTab(await context.newPage(), file());
    expect(await again.page.locator('.file').textContent()).toBe('cross.svg');
    await touchFirst(again.page);
    expect(Number(await size(again.page).inputValue())).toBe(held);
    expect(again.faults).toEqual([]);
    await context.close();
  });

  it('between two tabs: a piece of work that is open in one is a copy in the other, which says so; both are kept', async () => {
    const { page: one } = await open();
    const context = one.context();
    await give(one, { name: 'cross.svg', text: cross });
    await touchFirst(one);
    await size(one).fill('9');
    await isDressed(one);
    await expect.poll(() => keptWidths(one), PATIENTLY).toEqual([9]);

    const { page: two } = await openTab(await context.newPage(), file());
    await two.getByText('Kept in this browser (1)').click();
    // what the first tab does after the second has looked is not undone by it
    await size(one).fill('8');
    await isDressed(one);
    await expect.poll(() => keptWidths(one), PATIENTLY).toEqual([8]);
    await two.getByRole('button', { name: /^cross\.svg/ }).click();
    await two.getByRole('alert').waitFor();
    expect(await two.getByRole('alert').textContent()).toContain(
      'cross.svg is open in another tab, so this is a copy of it',
    );
    await isDressed(two);
    await touchFirst(two);
    expect(await size(two).inputValue()).toBe('8');
    await size(two).fill('6');
    await isDressed(two);
    await size(one).fill('10');
    await isDressed(one);
    await expect.poll(async () => (await keptWidths(one)).sort((a, b) => a - b), PATIENTLY).toEqual([6, 10]);
    for (const [page, has] of [
      [one, '10'],
      [two, '6'],
    ] as const) {
      await page.reload();
      await isDressed(page);
      await touchFirst(page);
      expect(await size(page).inputValue()).toBe(has);
    }
    await context.close();
  });

  it('between two tabs: an unfinished stitch of one bench is a copy on the other, which says so; both are kept', async () => {
    const { page: one } = await open();
    const context = one.context();
    await layFeather(one);
    await moveTip(one, 1);
    await expect.poll(() => keptTips(one), PATIENTLY).toEqual([0.1]);

    const { page: two } = await openTab(await context.newPage(), file());
    await two.getByRole('button', { name: 'Stitch bench' }).click();
    const unfinished = two.locator('.own li', { hasText: 'My feather' });
    await unfinished.waitFor();
    await moveTip(one, 1);
    await expect.poll(() => keptTips(one), PATIENTLY).toEqual([0.2]);
    await unfinished.getByRole('button', { name: 'Throw away' }).click();
    await two.getByText('My feather lies on the bench of another tab, so it stays').waitFor();
    await two.getByRole('button', { name: 'I see' }).click();
    await unfinished.locator('.what').click();
    await two.getByText('My feather lies on the bench of another tab, so this is a copy of it').waitFor();
    await fileOnBench(two).waitFor();
    expect(await fileOnBench(two).textContent()).toBe('my-feather-2.json');
    expect(await along(two)).toBe(0.2);

    await moveTip(two, 3);
    await moveTip(one, 1);
    await expect.poll(() => keptTips(one), PATIENTLY).toEqual([0.3, 0.5]);
    for (const [page, tip] of [
      [one, 0.3],
      [two, 0.5],
    ] as const) {
      await page.reload();
      await isDressed(page);
      await page.getByRole('button', { name: 'Stitch bench' }).click();
      await page.locator('[data-name="tip"]').waitFor();
      expect(await along(page)).toBe(tip);
    }
    await context.close();
  });

  it('between two tabs that save by the same name: the later one gets another name and says so', async () => {
    const { page: one } = await open();
    const context = one.context();
    const { page: two } = await openTab(await context.newPage(), file());
    for (const [page, times] of [
      [one, 1],
      [two, 2],
    ] as const) {
      await layFeather(page);
      await moveTip(page, times);
      expect(await fileOnBench(page).textContent()).toBe('my-feather.json');
    }
    const save = async (page: Page) => {
      await page.getByRole('button', { name: 'Save', exact: true }).click();
      await page.locator('.state', { hasText: /^saved/ }).waitFor();
    };
    await save(one);
    await save(two);
    await two.getByText('my-feather.json was saved by another tab meanwhile').waitFor();
    const saved = await storedIn<{ name: string; text: string }>(one, 'seamwright-stitches', 'stitches');
    expect(saved.map(({ name, text }) => [name, JSON.parse(text).points.tip[0]])).toEqual([
      ['my-feather', 0.1],
      ['my-feather-2', 0.2],
    ]);
    await context.close();
  });
});
