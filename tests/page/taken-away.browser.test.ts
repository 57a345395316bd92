import { readFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import { decode } from 'fast-png';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { readDst } from '../../src/formats/dst-read.js';
import { stopsOf } from '../../src/formats/stops.js';
import { PANEL_STOPS, piecedPanel } from '../fixtures/pieced-panel.js';
import { grayPage, hasPoppler, pdfInfo } from '../sheet/poppler.js';
import { give, isDressed, taken } from './browser.js';
import { describeInBrowser } from './in-browser.js';

const bytesOf = async (page: Page, title: string): Promise<Buffer> =>
  readFileSync((await taken(page, title)).path);
const stopsIn = (bytes: Uint8Array) =>
  stopsOf(readDst(bytes, 'taken')).filter(({ stitches }) => stitches > 0);
/** The share of a picture's dots that differ from its first one. */
const drawn = (dots: ArrayLike<number>, channels: number): number => {
  let other = 0;
  for (let i = 0; i < dots.length; i += channels) if (dots[i] !== dots[0]) other++;
  return (other * channels) / dots.length;
};
const PANEL = [130, 180] as const;

describeInBrowser('what is taken away', (open) => {
  it('is a picture at 300 dots to the inch and a drawing at actual size, as others read them', async () => {
    const { page } = await open();
    const png = decode(await bytesOf(page, 'Picture'));
    const svg = new Resvg((await bytesOf(page, 'Drawing')).toString('utf8'), {
      fitTo: { mode: 'zoom', value: 300 / 96 },
    });
    const rendered = svg.render();
    for (const { width, height } of [png, rendered]) {
      // the block, and what reaches beyond its edge
      expect(width).toBeGreaterThanOrEqual(Math.floor((PANEL[0] * 300) / 25.4));
      expect(width).toBeLessThan(((PANEL[0] + 20) * 300) / 25.4);
      expect(width / height).toBeCloseTo(PANEL[0] / PANEL[1], 1);
    }
    expect(Math.abs(png.width - rendered.width)).toBeLessThanOrEqual(2);
    expect(drawn(png.data, png.channels)).toBeGreaterThan(0.5);
    expect(drawn(rendered.pixels, 4)).toBeGreaterThan(0.5);
    await page.context().close();
  });

  it.skipIf(!hasPoppler)(
    'is a sew sheet and a transfer pattern that print on A4 with something on every page',
    async () => {
      const { page } = await open();
      for (const title of ['Sew sheet', 'Transfer pattern']) {
        const pdf = await bytesOf(page, title);
        const info = pdfInfo(pdf);
        expect(info.get('Page size')).toContain('A4');
        const pages = Number(info.get('Pages'));
        expect(pages).toBeGreaterThan(1);
        for (let k = 1; k <= pages; k++) expect(drawn(grayPage(pdf, k, 40).values, 1)).toBeGreaterThan(0.005);
      }
      await page.context().close();
    },
  );

  it('is a sampler to sew tonight with every treatment once, and a list with a line for each stop', async () => {
    const { page } = await open();
    const dressed = await page
      .locator('.stops > li > button.what')
      .evaluateAll((all) => [
        ...new Set(all.map((one) => one.firstChild!.textContent!.replace(/, seam.*/, ''))),
      ]);
    const sampler = stopsIn(await bytesOf(page, 'Sampler'));
    expect(sampler.length).toBeGreaterThanOrEqual(dressed.length);
    const list = (await bytesOf(page, 'List of stops')).toString('utf8').trim().split(/\r?\n/);
    expect(list.length).toBe(1 + 11);
    await page.context().close();
  });

  it('of a stitch file is the whole with the file’s own stops, or the dressing alone', async () => {
    const { page } = await open();
    await give(page, { name: 'pieced.dst', text: Buffer.from(piecedPanel()) });
    const whole = stopsIn(await bytesOf(page, 'Stitch file'));
    const alone = stopsIn(await bytesOf(page, 'Dressing alone'));
    expect(alone.length).toBeGreaterThan(5);
    expect(whole.length).toBe(alone.length + PANEL_STOPS.length);
    await page.context().close();
  });

  it('is the work itself, which opened again is the same', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'Mix again' }).click();
    await isDressed(page);
    const facts = await page.locator('.facts').textContent();
    const text = await bytesOf(page, 'The work itself');
    const { page: elsewhere } = await open();
    expect(await elsewhere.locator('.facts').textContent()).not.toBe(facts);
    await give(elsewhere, { name: 'panel.dressing.json', text });
    expect(await elsewhere.locator('.facts').textContent()).toBe(facts);
    expect((await bytesOf(elsewhere, 'Stitch file')).equals(await bytesOf(page, 'Stitch file'))).toBe(true);
    await elsewhere.context().close();
    await page.context().close();
  });
});
