import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { seriousIn } from './axe.js';
import { isDressed, PATIENTLY } from './browser.js';
import { describeInBrowser } from './in-browser.js';

const cross = `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="100mm" viewBox="0 0 120 100">
  <rect fill="#6d4670" x="0" y="0" width="60" height="100"/><rect fill="#d9c7a0" x="60" y="0" width="60" height="50"/>
  <rect fill="#3f8078" x="60" y="50" width="60" height="50"/></svg>`;

/** Goes on by Tab until a control is reached. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  const seen: string[] = [];
  for (let k = 0; k < 250; k++) {
    await page.keyboard.press('Tab');
    const is = await page.evaluate(() => {
      const one = document.activeElement as HTMLElement;
      return one.getAttribute('aria-label') ?? one.closest('label')?.textContent ?? one.textContent ?? '';
    });
    if (name.test(is)) return;
    seen.push(is.slice(0, 30));
  }
  throw new Error(`Tab never comes to ${name}: ${seen.join(' | ')}`);
}

/** Controls that Tab comes to whose focus cannot be seen: no line round them or round what stands for them. */
async function unseenFocus(page: Page): Promise<string[]> {
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  const hidden: string[] = [];
  const first = new Set<string>();
  for (let k = 0; k < 250; k++) {
    await page.keyboard.press('Tab');
    const { place, isSeen, html } = await page.evaluate(() => {
      const one = document.activeElement!;
      const stands = [
        one,
        one.closest('label'),
        one.nextElementSibling,
        ...Array.from(one.querySelectorAll('*')),
      ];
      const seen = stands.some((element) => {
        if (!element) return false;
        const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(element);
        const box = element.getBoundingClientRect();
        const isLine = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
        // what lies unseen over its picture shows nothing itself
        const isThere = Number(getComputedStyle(element).opacity) > 0 && box.width > 4 && box.height > 4;
        return isLine && isThere && !/, 0\)$/.test(outlineColor);
      });
      const path: number[] = [];
      for (let up: Element | null = one; up?.parentElement; up = up.parentElement)
        path.push(Array.from(up.parentElement.children).indexOf(up));
      return {
        place: path.join(),
        isSeen: seen || one === document.body || one.matches('svg .mark.chosen'),
        html: one.outerHTML.slice(0, 110),
      };
    });
    if (first.has(place)) break;
    first.add(place);
    if (!isSeen) hidden.push(html);
  }
  expect(first.size).toBeGreaterThan(8);
  return hidden;
}

describeInBrowser('the page is for everyone', (open) => {
  it('whole job by keyboard: a file opened, a seam touched, its stitch and size changed, sewn', async () => {
    const { page } = await open();
    // asked for beforehand: a browser that is not told in time opens a chooser of its own
    const choosing = page.waitForEvent('filechooser');
    await tabTo(page, /^Open a block/);
    await page.keyboard.press('Space');
    const chooser = await choosing;
    await chooser.setFiles({ name: 'cross.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(cross) });
    await page.locator('.file', { hasText: 'cross.svg' }).waitFor();
    await isDressed(page);
    await tabTo(page, /^The dressed block/);
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await tabTo(page, /^Search stitches by any name/);
    await page.keyboard.type('mossoul');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.has strong').textContent(), PATIENTLY).toBe('Herringbone');
    await page.locator('.table').focus();
    await tabTo(page, /^Size$/);
    const before = await page.getByLabel('Size', { exact: true }).inputValue();
    for (let k = 0; k < 5; k++) await page.keyboard.press('ArrowRight');
    const wide = Number(await page.getByLabel('Size', { exact: true }).inputValue());
    expect(wide).toBeCloseTo(Number(before) + 0.5, 6);
    await isDressed(page);
    for (let k = 0; k < 250; k++) {
      await page.keyboard.press('Shift+Tab');
      if (await page.locator('.take-away summary:focus').count()) break;
    }
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
    expect(download.suggestedFilename()).toBe('cross.dst');
    expect(
      readFileSync(await download.path())
        .subarray(0, 3)
        .toString(),
    ).toBe('LA:');
    await page.context().close();
  });

  it('shows where the focus is on every control, light and dark, on the block, a seam, the board and the bench', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const { page } = await open({ colorScheme });
      const all: Record<string, string[]> = { block: await unseenFocus(page) };
      await page.locator('.table').focus();
      await page.keyboard.press('ArrowRight');
      await page.getByText('More about this seam').click();
      all.seam = await unseenFocus(page);
      await page.getByRole('button', { name: 'Draw seams' }).click();
      await page.locator('.draw-more .aside', { hasText: 'lines drawn' }).waitFor();
      await page.locator('canvas.board').focus();
      await page.keyboard.press('ArrowRight');
      all.board = await unseenFocus(page);
      await page.getByRole('button', { name: 'Done' }).click();
      await page.getByRole('button', { name: 'Stitch bench' }).click();
      await page.getByLabel('Search stitches to copy').fill('briar');
      await page.getByRole('button', { name: 'Feather', exact: true }).click();
      await page.locator('[data-name="tip"]').waitFor();
      all.bench = await unseenFocus(page);
      expect(all).toEqual({ block: [], seam: [], board: [], bench: [] });
      await page.context().close();
    }
  });

  it('goes a step back by keys wherever the focus is, but where something is typed', async () => {
    const { page, faults } = await open();
    await page.locator('.table').focus();
    await page.keyboard.press('ArrowRight');
    const size = page.getByRole('slider', { name: 'Size', exact: true });
    const was = await size.inputValue();
    await size.press('ArrowRight');
    await expect.poll(() => size.inputValue(), PATIENTLY).not.toBe(was);
    await size.press('Control+z');
    await expect.poll(() => size.inputValue(), PATIENTLY).toBe(was);
    await size.press('Control+y');
    await expect.poll(() => size.inputValue(), PATIENTLY).not.toBe(was);
    const now = await size.inputValue();
    const search = page.getByLabel('Search stitches by any name');
    await search.pressSequentially('fly');
    await search.press('Control+z');
    expect(await size.inputValue()).toBe(now);
    expect(await search.inputValue()).not.toBe('fly');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('reads as well where it is pointed at: the colors of a button stay apart, and what is dragged stays what it looks like', async () => {
    const { page } = await open();
    const looks = (what: Locator) => what.evaluate((one) => getComputedStyle(one).backgroundImage);
    await page.getByRole('button', { name: 'Keep a place clear' }).click();
    const place = page.locator('.handle.place').last();
    const before = await looks(place);
    await place.hover();
    expect(await looks(place)).toBe(before);
    await page.getByRole('button', { name: 'Stitch bench' }).click();
    await page.getByRole('button', { name: 'From nothing' }).hover();
    expect(await seriousIn(page)).toEqual([]);
    await page.context().close();
  });

  it('moves nothing by itself where less motion is asked for', async () => {
    const { page } = await open({ reducedMotion: 'reduce' });
    const moving = () =>
      page.evaluate(() =>
        Array.from(document.querySelectorAll('body *'))
          .filter((one) => {
            const { transitionDuration, animationName } = getComputedStyle(one);
            return animationName !== 'none' || transitionDuration.split(', ').some((time) => time !== '0s');
          })
          .map((one) => one.outerHTML.slice(0, 80)),
      );
    expect(await moving()).toEqual([]);
    await page.locator('.table').focus();
    await page.keyboard.press('ArrowRight');
    expect(await moving()).toEqual([]);
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    expect((await moving()).length).toBeGreaterThan(0);
    await page.context().close();
  });

  it('says by more than color what is chosen, wrong or locked, and what a color is called', async () => {
    const { page } = await open();
    await page.locator('.findings button').first().waitFor();
    for (const said of await page.locator('.findings button').allTextContents())
      expect(said).toMatch(/^(✕ wrong|! look|· note)/);
    for (const color of await page.locator('input[type=color]').all())
      expect(
        await color.evaluate(
          (one) => (one.getAttribute('aria-label') ?? one.closest('label')?.textContent ?? '').length,
        ),
      ).toBeGreaterThan(4);
    await page.locator('.table').focus();
    await page.keyboard.press('ArrowRight');
    // what is chosen differs from what is not in its border's or letters' weight, and is told as chosen
    const weights = (where: string) =>
      page
        .locator(where)
        .first()
        .evaluate((one) => {
          const { borderTopWidth, fontWeight } = getComputedStyle(one);
          return `${borderTopWidth} ${fontWeight}`;
        });
    await page.locator('.card[aria-pressed="true"]').first().waitFor({ state: 'attached' });
    for (const kind of ['.card', '.families button'])
      expect(await weights(`${kind}[aria-pressed="true"]`)).not.toBe(
        await weights(`${kind}[aria-pressed="false"]`),
      );
    for (const spool of await page.locator('.spool-choice').all())
      expect(((await spool.textContent()) ?? '').trim().length).toBeGreaterThan(1);
    await page.context().close();
  });
});
