import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { encode } from 'fast-png';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { seamwright } from '../../cli/run-cli.js';
import { piecedPanel } from '../../fixtures/pieced-panel.js';
import { seriousIn } from '../axe.js';
import { give, isDressed, PATIENTLY, taken } from '../browser.js';
import { describeInBrowser } from '../in-browser.js';

type At = readonly [number, number];

/** Where a place of a block lies on the screen, which lies in the middle of the board; mm. */
async function onScreen(page: Page, [wide, high]: At): Promise<(place: At) => At> {
  // the board is drawn, and the block laid in its middle
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(null)))),
  );
  const { x, y, width, height } = (await page.locator('canvas.board').boundingBox())!;
  const scale = Math.min((width - 56) / wide, (height - 56) / high);
  return ([u, v]) => [
    x + (width - wide * scale) / 2 + u * scale,
    y + (height - high * scale) / 2 + v * scale,
  ];
}

/** Drags over the board through places of a block, mm. */
async function dragged(page: Page, places: readonly At[], size: At = [200, 200]): Promise<void> {
  const on = await onScreen(page, size);
  const [first, ...rest] = places;
  await page.mouse.move(...on(first));
  await page.mouse.down();
  for (const place of rest) await page.mouse.move(...on(place), { steps: 8 });
  await page.mouse.up();
}

/** How far two colors are apart, in the 255 steps of red, green or blue. */
const offBy = (a: string, b: string): number =>
  Math.max(
    ...[1, 3, 5].map((c) =>
      Math.abs(Number.parseInt(a.slice(c, c + 2), 16) - Number.parseInt(b.slice(c, c + 2), 16)),
    ),
  );
/** The core tells colors in steps of eight, and a photo is kept as JPEG. */
const NEAR = 6;
const PANEL: At = [130, 180];
const tool = (page: Page, title: string) => page.getByRole('radio', { name: title }).check({ force: true });
const facts = (page: Page) => page.locator('.facts').textContent();
/** The dressing as it is taken away. */
const kept = async (page: Page) =>
  JSON.parse(readFileSync((await taken(page, 'The work itself')).path, 'utf8'));
/** A photo: fields of plain colors side by side, 300 px each. */
function photoOf(colors: readonly string[]): Buffer {
  const [width, height] = [300 * colors.length, 600];
  const data = new Uint8Array(3 * width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const hex = colors[Math.floor(x / 300)];
      for (let c = 0; c < 3; c++)
        data[3 * (y * width + x) + c] = Number.parseInt(hex.slice(1 + 2 * c, 3 + 2 * c), 16);
    }
  }
  return Buffer.from(encode({ width, height, data, channels: 3 }));
}

const lines = (page: Page, count: string) => page.locator('.draw-more .aside', { hasText: count }).waitFor();

/** Lays a photo behind the board. */
async function layPhoto(page: Page): Promise<void> {
  await tool(page, 'Photo');
  await page.locator('.photo-panel input[type=file]').setInputFiles({
    name: 'hoop.png',
    mimeType: 'image/png',
    buffer: photoOf(['#2f4a6d', '#a5563f', '#6d7743']),
  });
  await page.locator('.photo-panel .steps').waitFor();
}

describeInBrowser('drawing seams', (open) => {
  it('on an empty block, undone and done again, dressed, and taken to the machine as the command line would write it', async () => {
    const { page, faults } = await open();
    await page.getByRole('button', { name: 'Draw seams' }).click();
    await page.getByText('An empty block').click();
    await page.getByRole('button', { name: '200 × 200 mm' }).click();
    await page.getByRole('button', { name: 'Lay it out' }).click();
    await lines(page, 'No seams yet');
    await isDressed(page);
    await dragged(page, [
      [-2, 60],
      [202, 90],
    ]);
    await lines(page, '1 line drawn');
    await dragged(page, [
      [70, 72],
      [60, 202],
    ]);
    await lines(page, '2 lines drawn');
    await page.getByRole('button', { name: 'Undo' }).click();
    await lines(page, '1 line drawn');
    await page.getByRole('button', { name: 'Redo' }).click();
    await lines(page, '2 lines drawn');
    expect(await seriousIn(page)).toEqual([]);

    await page.getByRole('button', { name: 'Done' }).click();
    await page.getByRole('button', { name: 'Mix again' }).click();
    await page.locator('.facts', { hasText: /[1-9]\d* stops/ }).waitFor();
    await isDressed(page);
    const kept = await taken(page, 'The work itself');
    const saved = JSON.parse(readFileSync(kept.path, 'utf8'));
    expect(saved.treatments).toHaveLength(2);
    expect(saved.threads.length).toBeGreaterThan(1);
    const sewn = await taken(page, 'Stitch file');

    const folder = mkdtempSync(join(tmpdir(), 'seamwright-'));
    copyFileSync(kept.path, join(folder, 'drawn.dressing.json'));
    const { status, stderr } = await seamwright(folder, 'dress', 'drawn.dressing.json', '--out', 'drawn.dst');
    expect([stderr, status]).toEqual(['', 0]);
    expect(readFileSync(join(folder, 'drawn.dst')).equals(readFileSync(sewn.path))).toBe(true);
    // the second seam ends on the first and on the edge, the first on the edge at both its ends
    writeFileSync(join(folder, 'drawn.svg'), saved.block.svg);
    const { seams, junctions } = JSON.parse(
      (await seamwright(folder, 'seams', 'drawn.svg', '--json')).stdout,
    );
    expect(seams).toHaveLength(2);
    expect(junctions.filter(({ onOutline }: { onOutline: boolean }) => onOutline)).toHaveLength(3);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('moves a point with a finger: patches and stitches follow while it is held, and one step back undoes it all', async () => {
    const { page, faults } = await open({ hasTouch: true, viewport: { width: 820, height: 1180 } });
    await page.getByRole('button', { name: 'Draw seams' }).click();
    await lines(page, '11 lines drawn');
    const untouched = await onScreen(page, PANEL);
    // the line that ends at the left edge, at 138 mm
    await page.touchscreen.tap(...untouched([70, 128.5]));
    await page.locator('.line-facts h3', { hasText: 'Line 11' }).waitFor();
    await isDressed(page);
    // where its points lie on the screen tells where all else does
    const middleOf = async (point: RegExp): Promise<At> => {
      const { x, y, width, height } = (await page.getByRole('button', { name: point }).boundingBox())!;
      return [x + width / 2, y + height / 2];
    };
    const [[right], [left, low]] = [await middleOf(/^Point 1 of 2/), await middleOf(/^Point 2 of 2/)];
    const scale = (right - left) / 90.827;
    const on = ([u, v]: At): At => [left + u * scale, low + (v - 138) * scale];
    const before = await facts(page);
    const grip = page.getByRole('button', { name: /^Point 2 of 2/ });
    const finger = { pointerId: 7, pointerType: 'touch', isPrimary: true, bubbles: true };
    const at = ([clientX, clientY]: At) => ({ ...finger, clientX, clientY });
    await grip.evaluate((element) => {
      // a finger that the test moves is not one that the browser knows
      Object.assign(element, { setPointerCapture() {}, hasPointerCapture: () => true });
    });
    await grip.dispatchEvent('pointerdown', at(on([0, 138])));
    await grip.dispatchEvent('pointermove', at(on([-3, 164])));
    await expect.poll(() => facts(page), PATIENTLY).not.toBe(before);
    const held = await facts(page);
    await grip.dispatchEvent('pointerup', at(on([-3, 164])));
    await isDressed(page);
    expect(await facts(page)).toBe(held);
    // beyond the edge is on the edge
    expect(await page.getByRole('button', { name: /^Point 2 of 2/ }).getAttribute('aria-label')).toMatch(
      /at 0\.0 mm across, 16[34]\.\d mm down/,
    );
    expect(await seriousIn(page)).toEqual([]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await isDressed(page);
    expect(await facts(page)).toBe(before);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Redo' }).click();
    await isDressed(page);
    expect(await facts(page)).toBe(held);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('by keys alone: a seam is put in, moved, bent, divided and taken out, and each is undone', async () => {
    const { page, faults } = await open({ colorScheme: 'dark' });
    await page.getByRole('button', { name: 'Draw seams' }).press('Enter');
    await lines(page, '11 lines drawn');
    await page.getByRole('button', { name: 'A seam across the middle' }).press('Enter');
    await lines(page, '12 lines drawn');
    const first = page.getByRole('button', { name: /^Point 1 of/ });
    const where = () => first.getAttribute('aria-label');
    const was = await where();
    await first.focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    const y = (label: string | null) => Number(/, ([\d.]+) mm down$/.exec(label!)![1]);
    expect(y(await where()) - y(was)).toBeCloseTo(2.1, 6);
    await page
      .getByRole('button', { name: /^Bend between/ })
      .first()
      .focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await page.getByRole('button', { name: 'Straighten' }).first().waitFor();
    await page.getByRole('button', { name: 'Point after' }).first().press('Enter');
    await page.getByRole('button', { name: 'Point 1 of 3', exact: false }).waitFor();
    await isDressed(page);
    expect(await seriousIn(page)).toEqual([]);
    for (const _ of 'point, bend, move') {
      if (await page.getByRole('button', { name: 'Undo' }).isDisabled()) break;
      await page.keyboard.press('Control+z');
      await isDressed(page);
    }
    await lines(page, '11 lines drawn');
    // arrow keys on the board go from line to line, Delete takes one out
    await page.locator('canvas.board').focus();
    await page.keyboard.press('ArrowRight');
    await page.locator('.line-facts h3', { hasText: 'Line 1,' }).waitFor();
    await page.keyboard.press('Delete');
    await lines(page, '10 lines drawn');
    await page.getByRole('heading', { name: 'Would miss their seam' }).waitFor();
    await page.keyboard.press('Control+z');
    await lines(page, '11 lines drawn');
    await page.getByRole('heading', { name: 'Would miss their seam' }).waitFor({ state: 'detached' });
    // with a cross that arrow keys move: a seam from the edge, and one place inside the block
    await tool(page, 'Straight');
    await page.locator('canvas.board').focus();
    for (let k = 0; k < 14; k++) await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Enter');
    for (let k = 0; k < 3; k++) await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await lines(page, '12 lines drawn');
    await isDressed(page);
    const { svg } = (await kept(page)).block;
    expect(svg).toMatch(/<path id="line-12" d="M 0 90 L 15 90\.5"\/>/);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('curved by a stroke, by places touched, and round as a ring; each is a seam of the block, and each is undone', async () => {
    const { page, faults } = await open();
    await page.getByRole('button', { name: 'Draw seams' }).click();
    await page.getByText('An empty block').click();
    await page.getByRole('button', { name: '200 × 200 mm' }).click();
    await page.getByRole('button', { name: 'Lay it out' }).click();
    await lines(page, 'No seams yet');
    await isDressed(page);
    await tool(page, 'Curved');
    // a wave from edge to edge, as a hand draws it
    const wave = Array.from({ length: 21 }, (_, i): At => [10 * i, 60 + 18 * Math.sin(i / 3)]);
    await dragged(page, wave);
    await lines(page, '1 line drawn');
    const on = await onScreen(page, [200, 200]);
    const touch = async (place: At) => page.mouse.click(...on(place));
    // a ring through four places closes where the first is touched again
    for (const place of [
      [100, 110],
      [140, 140],
      [100, 175],
      [60, 140],
      [100, 110],
    ] as const)
      await touch(place);
    await lines(page, '2 lines drawn');
    // places touched one after the other end where a seam is met
    for (const place of [
      [0, 110],
      [30, 125],
      [60, 140],
    ] as const)
      await touch(place);
    await lines(page, '3 lines drawn');
    await isDressed(page);
    const saved = await kept(page);
    const folder = mkdtempSync(join(tmpdir(), 'seamwright-'));
    writeFileSync(join(folder, 'curves.svg'), saved.block.svg);
    const { seams, junctions, patches } = JSON.parse(
      (await seamwright(folder, 'seams', 'curves.svg', '--json')).stdout,
    );
    expect(seams.filter(({ closed }: { closed: boolean }) => closed)).toHaveLength(1);
    expect(seams).toHaveLength(3);
    expect(patches).toHaveLength(3);
    expect(junctions).toHaveLength(4);
    // the wave is where the hand went: no trembling, and no more than a millimeter off
    const across = seams.find(({ points }: { points: At[] }) => points.every(([, y]) => y < 100));
    const offs = across.points.map(([x, y]: At) => Math.abs(y - 60 - 18 * Math.sin(x / 30)));
    expect(Math.max(...offs)).toBeLessThan(1.5);
    for (const left of ['2 lines drawn', '1 line drawn', 'No seams yet']) {
      await page.getByRole('button', { name: 'Undo' }).click();
      await lines(page, left);
    }
    await page.getByRole('button', { name: 'Redo' }).click();
    await lines(page, '1 line drawn');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('over a stitch file, whose stops stay: its bytes are those that the command line writes', async () => {
    const { page, faults } = await open();
    await give(page, { name: 'panel.dst', text: Buffer.from(piecedPanel()) });
    await page.getByRole('button', { name: 'Draw seams' }).click();
    await page.getByText('What the file sews lies behind the lines').waitFor();
    const count = await page.locator('.draw-more .aside').textContent();
    await page.getByRole('button', { name: 'A seam across the middle' }).click();
    await lines(page, `${Number.parseInt(count!, 10) + 1} lines drawn`);
    await isDressed(page);
    const saved = await kept(page);
    expect(saved.block.file).toBe('panel.dst');
    expect(saved.block.traced).toContain('<svg');
    const sewn = await taken(page, 'Stitch file');
    const folder = mkdtempSync(join(tmpdir(), 'seamwright-'));
    writeFileSync(join(folder, 'panel.dst'), piecedPanel());
    writeFileSync(join(folder, 'panel.dressing.json'), JSON.stringify(saved));
    const { status, stderr } = await seamwright(
      folder,
      'dress',
      'panel.dressing.json',
      '--out',
      'dressed.dst',
    );
    expect([stderr, status]).toEqual(['', 0]);
    expect(readFileSync(join(folder, 'dressed.dst')).equals(readFileSync(sewn.path))).toBe(true);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('on a photo that is scaled by two known points, in inches as in millimeters', async () => {
    const { page, faults } = await open();
    await page.getByRole('button', { name: 'Draw seams' }).click();
    await lines(page, '11 lines drawn');
    await layPhoto(page);
    const on = await onScreen(page, PANEL);
    const mark = (place: At) => page.mouse.click(...on(place));
    const apart = page.getByLabel('They are apart');
    await mark([20, 40]);
    await mark([110, 160]);
    await apart.waitFor();
    // 3, 4 and 5: 90 mm across and 120 mm down
    expect(Number(await apart.inputValue())).toBeCloseTo(150, 0);
    await apart.fill('120');
    await apart.press('Enter');
    await apart.waitFor({ state: 'detached' });
    await mark([20, 40]);
    // the same point of the photo lies at four fifths of the way now
    await mark([20 + 0.8 * 90, 40 + 0.8 * 120]);
    expect(Math.abs(Number(await apart.inputValue()) - 120)).toBeLessThan(0.5);
    expect(await seriousIn(page)).toEqual([]);
    await page.getByRole('button', { name: 'Undo' }).click();
    // as large as it was, the marks are 120 by 150 / 120 apart
    await expect
      .poll(async () => Math.abs(Number(await apart.inputValue()) - 150), PATIENTLY)
      .toBeLessThan(0.6);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('on a photo that lies behind: a treatment whose base line would miss its seam is named, until the seam is where it was', async () => {
    const { page, faults } = await open();
    await page.getByRole('button', { name: 'Draw seams' }).click();
    await lines(page, '11 lines drawn');
    await layPhoto(page);
    const missing = page.locator('.missing');
    expect(await missing.count()).toBe(0);
    // the seam that fly lies on is traced where it really is: taken out, and drawn elsewhere
    await tool(page, 'Move');
    await page.locator('canvas.board').focus();
    for (let k = 0; k < 4; k++) await page.keyboard.press('ArrowRight');
    await page.locator('.line-facts h3', { hasText: 'Line 4,' }).waitFor();
    await page.keyboard.press('Delete');
    await missing.getByText('Fly').waitFor();
    expect(await missing.textContent()).toMatch(
      /its seam is not where it was; the nearest, seam \d+, is \d+\.\d mm off/,
    );
    // whichever tool is in the hand, and the photo's as well
    await tool(page, 'Photo');
    await missing.getByText('Fly').waitFor();
    expect(await page.locator('.photo-panel .steps').count()).toBe(1);
    expect(await seriousIn(page)).toEqual([]);
    // it is not thrown away: it lies there again with its seam
    expect((await kept(page)).treatments).toHaveLength(11);
    await page.getByRole('button', { name: 'Undo' }).click();
    await missing.waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('with fabrics picked from photos: by touch, by keys, and all at once from the one behind the block', async () => {
    const { page, faults } = await open();
    const colors = ['#2f4a6d', '#a5563f', '#6d7743'];
    await page.getByRole('button', { name: 'Draw seams' }).click();
    await lines(page, '11 lines drawn');
    await tool(page, 'Fabric');
    const swatch = (k: number) =>
      page
        .locator('.fabrics input')
        .nth(k - 1)
        .inputValue();
    const was = await swatch(1);
    await page.locator('.panel input[type=file][accept="image/*"]').setInputFiles({
      name: 'fabrics.png',
      mimeType: 'image/png',
      buffer: photoOf(colors),
    });
    const photo = page.locator('.fabric-photo');
    await photo.waitFor();
    const { width, height } = (await photo.boundingBox())!;
    await photo.click({ position: { x: width * 0.17, y: height / 2 } });
    await expect.poll(async () => offBy(await swatch(1), colors[0]), PATIENTLY).toBeLessThanOrEqual(NEAR);
    // the next patch is chosen; the ring goes on by keys
    await photo.focus();
    for (let k = 0; k < 7; k++) await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await expect.poll(async () => offBy(await swatch(2), colors[1]), PATIENTLY).toBeLessThanOrEqual(NEAR);
    expect(await seriousIn(page)).toEqual([]);
    const { fabrics } = await kept(page);
    expect(fabrics.find(({ patch }: { patch: { id: number } }) => patch.id === 1)).toMatchObject({
      colors: [{ share: 1 }],
      busyness: 0,
      picture: 'fabrics.png',
    });
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => swatch(1), PATIENTLY).toBe(was);

    await tool(page, 'Photo');
    await page.locator('.photo-panel input[type=file]').setInputFiles({
      name: 'hoop.png',
      mimeType: 'image/png',
      buffer: photoOf(['#8c2f3f', '#8c2f3f', '#8c2f3f']),
    });
    await page.locator('.photo-panel .steps').waitFor();
    await isDressed(page);
    await tool(page, 'Fabric');
    await page.getByRole('button', { name: 'All colors from the photo' }).click();
    await expect
      .poll(async () => {
        const values = await Promise.all([1, 2, 3, 4].map(swatch));
        return Math.max(...values.map((hex) => offBy(hex, '#8c2f3f')));
      }, PATIENTLY)
      .toBeLessThanOrEqual(NEAR);
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
