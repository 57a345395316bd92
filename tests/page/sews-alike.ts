import { copyFileSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Dressing } from '../../src/formats/dressing.js';
import { seamwright } from '../cli/run-cli.js';
import { isDressed, taken } from './browser.js';

/** The dressing as it is taken away. */
export const kept = async (page: Page): Promise<Dressing> =>
  JSON.parse(readFileSync((await taken(page, 'The work itself')).path, 'utf8'));

/** What the page sews is byte for byte what the command line sews of the dressing that it took away. */
export async function sewsAlike(page: Page): Promise<void> {
  await isDressed(page);
  const folder = mkdtempSync(join(tmpdir(), 'seamwright-'));
  const dressing = await taken(page, 'The work itself');
  copyFileSync(dressing.path, join(folder, dressing.name));
  const sewn = await taken(page, 'Stitch file');
  const { stderr } = await seamwright(folder, 'dress', dressing.name, '--out', 'cli.dst');
  expect(stderr).toBe('');
  expect(readFileSync(sewn.path).equals(readFileSync(join(folder, 'cli.dst')))).toBe(true);
}

/** A part of the panel, unfolded. */
export async function unfolded(page: Page, title: string): Promise<Locator> {
  const leaf = page.locator('.leaf', { has: page.locator('summary', { hasText: title }) });
  if ((await leaf.getAttribute('open')) === null) await leaf.locator('summary').click();
  return leaf;
}

/** Drags what is there by so many pixels, in steps, as a hand does. */
export async function dragged(page: Page, what: Locator, dx: number, dy: number): Promise<void> {
  const { x, y, width, height } = (await what.boundingBox())!;
  const [fromX, fromY] = [x + width / 2, y + height / 2];
  await page.mouse.move(fromX, fromY);
  await page.mouse.down();
  for (let i = 1; i <= 6; i++) await page.mouse.move(fromX + (dx * i) / 6, fromY + (dy * i) / 6);
  await page.mouse.up();
}
