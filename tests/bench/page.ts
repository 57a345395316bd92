import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { builtPage, hasBrowser, isDressed, launched, openPage } from '../page/browser.js';
import { FRAME_TRACE, frameWork } from './frame-work.js';

/** How often the page is opened; how often the size is dragged, and over how many steps. */
const OPENINGS = 9;
const DRAGS = 5;
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
  await page.waitForFunction(() => performance.getEntriesByName('seamwright first picture').length > 0);
  opened.push(
    await page.evaluate(() => performance.getEntriesByName('seamwright first picture')[0].startTime),
  );
  await page.context().close();
}
tell('from opening until the first picture is on the screen, ms', opened);
const { page } = await openPage(browser, file);
await page.locator('.table').focus();
await page.keyboard.press('ArrowRight');
// cards of the shelf are drawn first
await page.waitForTimeout(3000);
await isDressed(page);
for (let i = 0; i < DRAGS; i++) {
  const { frames, work, paintings } = await dragged(page);
  tell(`drag ${i + 1}, from frame to frame, ms`, frames);
  tell("  a frame's work on the page's own thread, ms", work);
  tell('  from one picture of the seam fitted anew to the next, ms', paintings);
}
await browser.close();

interface Dragged {
  /** from each frame to the next, ms, from pressing the handle to letting it go */
  readonly frames: number[];
  /** from each new picture on the table to the next, ms */
  readonly paintings: number[];
  /** what each frame took of the page's own thread, ms */
  readonly work: number[];
}

/** Drags the handle of the first seam's size to and fro, and measures meanwhile. */
async function dragged(page: Page): Promise<Dragged> {
  const handle = page.getByRole('slider', { name: 'Size of the stitch' });
  const { x, y, width, height } = (await handle.boundingBox())!;
  const [startX, startY] = [x + width / 2, y + height / 2];
  // as text: what runs these sources gives functions names in a way that the page does not know
  await page.evaluate(`
    window.framesSeen = [];
    window.paintingsSeen = [];
    const since = () => {
      let last = null;
      return (list) => {
        const now = performance.now();
        if (last !== null) list.push(now - last);
        last = now;
      };
    };
    const frame = since();
    window.measuring = true;
    requestAnimationFrame(function next() {
      frame(window.framesSeen);
      if (window.measuring) requestAnimationFrame(next);
    });
    const shown = ImageBitmapRenderingContext.prototype;
    window.showing ??= shown.transferFromImageBitmap;
    const painting = since();
    shown.transferFromImageBitmap = function (bitmap) {
      painting(window.paintingsSeen);
      return window.showing.call(this, bitmap);
    };
  `);
  await browser.startTracing(page, { categories: FRAME_TRACE });
  await page.mouse.move(startX, startY);
  await page.mouse.down();
  for (let i = 0; i < STEPS; i++) {
    const aside = 14 * Math.sin((i * Math.PI) / 40);
    await page.mouse.move(startX + aside, startY + aside);
    await page.waitForTimeout(8);
  }
  await page.mouse.up();
  const trace = await browser.stopTracing();
  await page.evaluate('window.measuring = false');
  await isDressed(page);
  await page.waitForTimeout(500);
  return {
    frames: await page.evaluate<number[]>('window.framesSeen'),
    paintings: await page.evaluate<number[]>('window.paintingsSeen'),
    work: frameWork(trace.toString()),
  };
}

function tell(what: string, values: readonly number[]): void {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))].toFixed(1);
  console.log(`${what}: median ${at(0.5)}, 95 % below ${at(0.95)}, ${at(0)} to ${at(1)} (${values.length})`);
}
