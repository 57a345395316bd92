import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { LIMITS } from '../../src/check/density/limits.js';
import { drawOverlays } from '../../src/draw/overlays/overlay-picture.js';
import { workOfDressed } from '../../src/draw/overlays/work-of-dressed.js';
import { titled } from '../draw/svg-elements.js';
import { demoPanel } from '../gallery/demo-panel.js';
import { seriousIn } from './axe.js';
import { atRest, isDressed, PATIENTLY } from './browser.js';
import { describeInBrowser } from './in-browser.js';

/** What is seen of the table once it is painted. */
async function seen(page: Page): Promise<string> {
  await isDressed(page);
  await page.locator('.table[aria-busy="false"]').waitFor();
  return (await page.locator('.table').screenshot()).toString('base64');
}
const width = async (page: Page, what: string): Promise<number> =>
  (await page.locator(what).boundingBox())!.width;

/** The scale at which the block lies on the screen, px to the mm, told by two points of a drawn line. */
async function scaleOnBoard(page: Page): Promise<number> {
  await page.getByRole('button', { name: 'Draw seams' }).click();
  await page.locator('.draw-more .aside', { hasText: '11 lines drawn' }).waitFor();
  await page.locator('canvas.board').focus();
  await page.keyboard.press('ArrowRight');
  const points = await page.getByRole('button', { name: /^Point \d+ of/ }).all();
  const places: number[][] = [];
  for (const point of points) {
    const [, x, y] = /at ([\d.]+) mm across, ([\d.]+) mm down/.exec(
      (await point.getAttribute('aria-label'))!,
    )!;
    const box = (await point.boundingBox())!;
    places.push([Number(x), Number(y), box.x, box.y]);
  }
  const [a, b] = [places[0], places[places.length - 1]];
  await page.getByRole('button', { name: 'Done' }).click();
  return Math.hypot(b[2] - a[2], b[3] - a[3]) / Math.hypot(b[0] - a[0], b[1] - a[1]);
}

describeInBrowser('looking at the block', (open) => {
  it('leads from what is worth a look to the beginning of what is told of its seam', async () => {
    const { page } = await open({ viewport: { width: 1024, height: 768 } });
    const panel = page.locator('.panel');
    const down = () => panel.evaluate((one) => one.scrollTop);
    const first = page.locator('.findings button').first();
    await first.scrollIntoViewIfNeeded();
    expect(await down()).toBeGreaterThan(300);
    await first.click();
    await page.getByRole('heading', { name: /^Seam \d+/ }).waitFor();
    await expect.poll(down, PATIENTLY).toBe(0);
    await page.context().close();
  });

  it('shows it as large as it is sewn once the screen was measured against a card, and asks only once', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'True size' }).click();
    const dialog = page.getByRole('dialog');
    // a bank card is 85.60 by 53.98 mm: ISO/IEC 7810, format ID-1
    await dialog.getByRole('slider').fill('3');
    const card = (await page.locator('.bank-card').boundingBox())!;
    expect(card.width / card.height).toBeCloseTo(85.6 / 53.98, 2);
    expect(card.width).toBeCloseTo(3 * 85.6, 0);
    await page.getByRole('button', { name: 'They are alike' }).click();
    await dialog.waitFor({ state: 'hidden' });
    expect(await scaleOnBoard(page)).toBeCloseTo(3, 1);

    await page.reload();
    await isDressed(page);
    await page.getByRole('button', { name: 'True size' }).click();
    expect(await dialog.isVisible()).toBe(false);
    expect(await scaleOnBoard(page)).toBeCloseTo(3, 1);

    // another screen, or a card held badly: measured anew, from what it was
    await page.getByRole('button', { name: 'Measure the screen anew' }).click();
    expect(await width(page, '.bank-card')).toBeCloseTo(3 * 85.6, 0);
    await dialog.getByRole('slider').fill('4');
    await page.getByRole('button', { name: 'They are alike' }).click();
    expect(await scaleOnBoard(page)).toBeCloseTo(4, 1);
    await page.context().close();
  });

  it('plays the sewing stop by stop, halts, goes on, and is whole again for who goes on working', async () => {
    const { page } = await open();
    const whole = await seen(page);
    const table = (await page.locator('.table').boundingBox())!;
    await page.getByRole('button', { name: 'Watch it sewn' }).click();
    const caption = page.locator('.caption');
    await page.getByText(/^2 of 11: /).waitFor();
    await page.getByRole('button', { name: 'Halt' }).click();
    const at = await caption.textContent();
    expect(await seen(page)).not.toBe(whole);
    // the picture stays where it is while it is played
    expect(await page.locator('.table').boundingBox()).toEqual(table);
    await page.getByRole('button', { name: 'Sew on' }).click();
    await expect.poll(() => caption.textContent(), PATIENTLY).not.toBe(at);
    await caption.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Watch it sewn' }).waitFor();
    expect(await seen(page)).toBe(whole);

    // by keys: one stop back is all but the last
    await page.getByRole('slider', { name: 'Sewn up to stop' }).press('ArrowLeft');
    expect(await caption.textContent()).toMatch(/^10 of 11: /);
    await page.locator('.table').focus();
    await page.keyboard.press('ArrowRight');
    await caption.waitFor({ state: 'detached' });
    await page.context().close();
  });

  it('shows thread against fabric, chosen by keys alone, with the very marks of the command line', async () => {
    const { page } = await open();
    const asThread = await seen(page);
    // pictures come to the table as blobs: the last one is kept to be read
    await page.evaluate(() => {
      const address = URL.createObjectURL;
      URL.createObjectURL = (blob) => {
        if (blob instanceof Blob && blob.type === 'image/svg+xml') {
          void blob.text().then((svg) => document.body.setAttribute('data-looked', svg));
        }
        return address(blob);
      };
    });
    const looks = page.getByLabel('What is looked at');
    await looks.focus();
    const chosen = () =>
      looks.evaluate((one) => (one as HTMLSelectElement).selectedOptions[0].textContent?.trim());
    for (let k = 0; k < 8 && (await chosen()) !== 'Thread against fabric'; k++) {
      await page.keyboard.press('ArrowDown');
    }
    expect(await chosen()).toBe('Thread against fabric');
    const told = (svg: string) => titled(svg, /: contrast [\d.]+, /).map(({ title }) => title);
    const expected = told(drawOverlays(workOfDressed(await demoPanel()), new Set(['contrast']), LIMITS.firm));
    expect(expected.length).toBeGreaterThan(30);
    const drawn = async () =>
      told(
        (await page.locator('body').getAttribute('data-looked')) ??
          '<svg xmlns="http://www.w3.org/2000/svg"/>',
      );
    await expect.poll(drawn, PATIENTLY).toEqual(expected);
    await expect.poll(() => seen(page), PATIENTLY).not.toBe(asThread);
    await page.keyboard.press('Home');
    await expect.poll(() => seen(page), PATIENTLY).toBe(asThread);
    await page.context().close();
  });

  it('tells what its marks mean in letters that are read, however small the block is shown; it lies where it lay', async () => {
    const { page, faults } = await open({ viewport: { width: 768, height: 1024 } });
    const looks = page.getByLabel('What is looked at');
    const shown = page.getByRole('region', { name: 'What is seen' });
    expect(await shown.count()).toBe(0);
    for (const [look, told] of [
      ['density', /Needle holes for each mm²/],
      ['stops', /Chevron, seam 6/],
      ['contrast', /melts into the fabric/],
    ] as const) {
      await looks.selectOption(look);
      await shown.getByText(told).first().waitFor();
      const letters = await shown
        .locator('li')
        .first()
        .evaluate((one) => Number.parseFloat(getComputedStyle(one).fontSize));
      expect(letters).toBeGreaterThanOrEqual(14);
      // the picture fills the table as the block does, with nothing around it
      const [table, picture] = await Promise.all([
        atRest(page.locator('.table')),
        atRest(page.locator('.table img')),
      ]);
      expect(table.height - picture.height).toBeLessThan(60);
    }
    expect(await seriousIn(page)).toEqual([]);
    await looks.selectOption('thread');
    await shown.waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('comes nearer and goes away by button, key and wheel, and lies whole in the middle again', async () => {
    const { page } = await open();
    const whole = await seen(page);
    const nearer = async (does: () => Promise<unknown>) => {
      await does();
      await expect.poll(() => seen(page), PATIENTLY).not.toBe(whole);
      await page.getByRole('button', { name: 'Whole block' }).click();
      await expect.poll(() => seen(page), PATIENTLY).toBe(whole);
      expect(await page.getByRole('button', { name: 'Whole block' }).getAttribute('aria-pressed')).toBe(
        'true',
      );
    };
    // the pointer stays where it is, so that no button looks otherwise
    await nearer(() => page.getByRole('button', { name: 'Nearer' }).click());
    await nearer(() => page.keyboard.press('-'));
    await nearer(async () => {
      await page.mouse.move(500, 400);
      await page.mouse.wheel(0, -300);
    });
    await page.context().close();
  });

  it('names what is worth a look, the worst first, and each leads to its place or its seam', async () => {
    const { page } = await open();
    const findings = page.locator('.findings button');
    await findings.first().waitFor();
    const ranks = (await findings.locator('.sign').allTextContents()).map((sign) =>
      ['✕ wrong', '! look', '· note'].indexOf(sign),
    );
    expect(ranks.length).toBeGreaterThan(2);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(ranks).not.toContain(-1);
    const whole = await seen(page);
    for (let k = 0; k < ranks.length; k++) {
      const said = await findings.nth(k).textContent();
      await findings.nth(k).click();
      await expect.poll(() => seen(page), { ...PATIENTLY, message: `${said} leads nowhere` }).not.toBe(whole);
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Whole block' }).click();
      await expect.poll(() => seen(page), PATIENTLY).toBe(whole);
      await findings.first().waitFor();
    }
    await page.context().close();
  });
});
