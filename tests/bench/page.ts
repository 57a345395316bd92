import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { builtPage, hasBrowser, isDressed, launched, openPage } from '../page/browser.js';

/** How often the page is opened, and over how many steps the size is dragged. */
const OPENINGS = 7;
const STEPS = 240;

if (!hasBrowser) {
  console.log('The page is not measured: there is no Chromium on this machine.');
  process.exit(0);
}
const file = await builtPage();
const bytes = readFileSync(file);
console.log(`the page: ${bytes.length} bytes, ${gzipSync(bytes).length} packed`);
const browser = await launched();
const opened: number[] = [];
for (let i = 0; i < OPENINGS; i++) {
  const { page } = await openPage(browser, file);
  opened.push(
    await page.evaluate(() => performance.getEntriesByName('seamwright first picture')[0].startTime),
  );
  await page.context().close();
}
tell('from opening to the first picture, ms', opened);
const { page } = await openPage(browser, file);
tell('between frames while the width is dragged, ms', await framesOfDragging(page));
await browser.close();

/** Drags the size of the first seam to and fro, and measures from frame to frame. */
async function framesOfDragging(page: Page): Promise<number[]> {
  await page.locator('.table').focus();
  await page.keyboard.press('ArrowRight');
  const slider = page.getByLabel('Size', { exact: true });
  const { x, y, width, height } = (await slider.boundingBox())!;
  // cards of the shelf are drawn first
  await page.waitForTimeout(3000);
  await isDressed(page);
  // as text: what runs these sources gives functions names in a way that the page does not know
  await page.evaluate(`
    window.framesSeen = [];
    let last = performance.now();
    requestAnimationFrame(function next() {
      const now = performance.now();
      window.framesSeen.push(now - last);
      last = now;
      requestAnimationFrame(next);
    });
  `);
  await page.mouse.move(x + width * 0.3, y + height / 2);
  await page.mouse.down();
  for (let i = 0; i < STEPS; i++) {
    const share = 0.3 + 0.4 * Math.abs(Math.sin((i * Math.PI) / 60));
    await page.mouse.move(x + width * share, y + height / 2);
    await page.waitForTimeout(8);
  }
  await page.mouse.up();
  return page.evaluate<number[]>('window.framesSeen');
}

function tell(what: string, values: readonly number[]): void {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))].toFixed(1);
  console.log(`${what}: median ${at(0.5)}, 95 % below ${at(0.95)}, ${at(0)} to ${at(1)} (${values.length})`);
}
