import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { seamwright } from '../../cli/run-cli.js';
import { seriousIn } from '../axe.js';
import { isDressed, taken } from '../browser.js';
import { describeInBrowser } from '../in-browser.js';

type At = readonly [number, number];

/** Drags over the board through places of a block of 200 by 200 mm, which lies in its middle. */
async function dragged(page: Page, places: readonly At[]): Promise<void> {
  const { x, y, width, height } = (await page.locator('canvas.board').boundingBox())!;
  const scale = Math.min((width - 56) / 200, (height - 56) / 200);
  const on = ([u, v]: At) =>
    [x + (width - 200 * scale) / 2 + u * scale, y + (height - 200 * scale) / 2 + v * scale] as const;
  const [first, ...rest] = places;
  await page.mouse.move(...on(first));
  await page.mouse.down();
  for (const place of rest) await page.mouse.move(...on(place), { steps: 8 });
  await page.mouse.up();
}

const lines = (page: Page, count: string) => page.locator('.draw-more .aside', { hasText: count }).waitFor();

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
  }, 60_000);
});
