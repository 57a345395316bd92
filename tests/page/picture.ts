import { join } from 'node:path';
import sharp from 'sharp';
import { builtPage, isDressed, launched, openPage } from './browser.js';

/** Takes the picture of the page that README shows: the demo block, a seam of it touched. `npx tsx tests/page/picture.ts` */
const [browser, file] = await Promise.all([launched(), builtPage()]);
const { page } = await openPage(browser, file);
await page.locator('.table').focus();
for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowRight');
// the cards that are in sight are drawn one after the other
await page.waitForTimeout(6000);
await isDressed(page);
await page.mouse.move(0, 0);
const picture = await page.screenshot();
await sharp(picture)
  .png({ palette: true, colors: 128, compressionLevel: 9 })
  .toFile(join(import.meta.dirname, '../../gallery/page.png'));
await browser.close();
