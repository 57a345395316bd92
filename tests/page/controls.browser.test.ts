import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { Dressing } from '../../src/formats/dressing.js';
import { seamwright } from '../cli/run-cli.js';
import { piecedPanel } from '../fixtures/pieced-panel.js';
import { seriousIn } from './axe.js';
import { give, isDressed, PATIENTLY, taken } from './browser.js';
import { describeInBrowser } from './in-browser.js';

/** Seam 1 runs down, bent at a right angle; others butt into it from both sides. */
const bent = `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="100mm" viewBox="0 0 120 100">
  <path fill="#6d4670" d="M0 0H60V50H0Z"/><path fill="#3f8078" d="M0 50H60V100H0Z"/>
  <path fill="#d9c7a0" d="M60 0H120V60H60Z"/><path fill="#8c2f3f" d="M60 60H120V100H60Z"/></svg>`;

/** The dressing as it is taken away. */
const kept = async (page: Page): Promise<Dressing> =>
  JSON.parse(readFileSync((await taken(page, 'The work itself')).path, 'utf8'));
const fold = (page: Page, title: string): Locator =>
  page.locator('.leaf', { has: page.locator('summary', { hasText: title }) });
async function opened(page: Page, title: string): Promise<Locator> {
  const leaf = fold(page, title);
  if ((await leaf.getAttribute('open')) === null) await leaf.locator('summary').click();
  return leaf;
}
const slide = (within: Locator, title: string, value: number) =>
  within.getByLabel(title, { exact: true }).first().fill(String(value));
const choose = (within: Locator, title: string, value: string) =>
  within.getByLabel(title, { exact: true }).first().selectOption(value);
async function touchFirst(page: Page): Promise<void> {
  await page.locator('.table').focus();
  await page.keyboard.press('ArrowRight');
  await page.getByText('More about this seam').click();
}

/** What the page sews is byte for byte what the command line sews of the dressing that it took away. */
async function sewsAlike(
  page: Page,
  ...beside: readonly { name: string; bytes: Uint8Array }[]
): Promise<void> {
  await isDressed(page);
  const folder = mkdtempSync(join(tmpdir(), 'seamwright-'));
  const dressing = await taken(page, 'The work itself');
  copyFileSync(dressing.path, join(folder, dressing.name));
  for (const { name, bytes } of beside) writeFileSync(join(folder, name), bytes);
  const sewn = await taken(page, 'Stitch file');
  const { stderr } = await seamwright(folder, 'dress', dressing.name, '--out', 'cli.dst');
  expect(stderr).toBe('');
  expect(readFileSync(sewn.path).equals(readFileSync(join(folder, 'cli.dst')))).toBe(true);
}

describeInBrowser('controls of the page', (open) => {
  it('say of a seam its rows, accents, guide line, corners, ends, side and ribbon, and sew what the command line does', async () => {
    const { page, faults } = await open();
    await give(page, { name: 'bent.svg', text: bent });
    await touchFirst(page);
    const seam = async () => (await kept(page)).treatments.find(({ seam: { id } }) => id === 1)!;

    const shelf = page.getByLabel('Search stitches by any name');
    await shelf.fill('blanket');
    await page.getByRole('button', { name: 'Blanket', exact: true }).click();

    const rows = await opened(page, 'Rows');
    await rows.getByLabel('Add a row of').selectOption('fly');
    const second = rows.locator('li').nth(1);
    await choose(second, 'Stands', 'as');
    await slide(second, 'Off the seam', 3);
    await choose(second, 'Repeats', '2').catch(() => null);
    await slide(second, 'Step', 0.5);
    expect((await seam()).rows[1]).toMatchObject({ stitch: 'fly', flip: false, offset: 3, step: 0.5 });

    const accents = await opened(page, 'Accents');
    await accents.getByLabel('Add an accent').selectOption('daisy');
    const one = accents.locator('li').first();
    await choose(one, 'Of these', '2');
    await slide(one, 'Beginning at', 2);
    await slide(one, 'Its size', 10);
    await choose(one, 'From seat to seat', 'turn');
    await slide(one, 'Turned', 90);
    await slide(one, 'Off its seat', 1);
    expect((await seam()).accents).toMatchObject([
      { row: 0, ornament: 'daisy', every: 2, from: 1, parameters: { size: 10 }, turn: 90, away: 1 },
    ]);
    expect((await seam()).accents![0].graded!.length).toBe(2);
    await one.getByRole('button', { name: 'Alternate with another' }).click();
    await choose(accents.locator('li').nth(1), 'What it is', 'hand bead');
    expect((await seam()).accents!.map(({ every, from, byHand }) => [every, from, byHand])).toEqual([
      [4, 1, undefined],
      [4, 3, 'bead'],
    ]);

    const guide = await opened(page, 'Guide line');
    await choose(guide, 'It follows', 'scallop');
    await slide(guide, 'High', 6);
    await slide(guide, 'One wave long', 30);
    expect((await seam()).guide).toEqual({ shape: 'scallop', height: 6, length: 30 });
    await choose(guide, 'It follows', '');

    const way = await opened(page, 'Ends, corners, side');
    await choose(way, 'Its start', 'short');
    await choose(way, 'Its end', 'tuck');
    await choose(way, 'At a sharp corner', 'break');
    await choose(way, 'Side', 'left');
    await choose(way, 'Grows', 'back');
    expect(await seam()).toMatchObject({
      ends: ['short', 'tuck'],
      corner: 'break',
      side: 'left',
      reverse: true,
    });

    const laid = await opened(page, 'Laid beneath');
    await laid.getByLabel('Ribbon, braid or lace, held by the rows').check();
    await slide(laid, 'Width', 5);
    expect((await seam()).laid).toMatchObject({ name: 'satin ribbon', width: 5 });

    await sewsAlike(page);
    expect(await page.getByRole('alert').count()).toBe(0);
    expect(faults).toEqual([]);
    for (let i = 0; i < 3; i++) await page.keyboard.press('Control+z');
    expect((await seam()).laid).toBeUndefined();
    await page.context().close();
  });

  it('say who runs through, part and join seams, and sew what the command line does', async () => {
    const { page } = await open();
    await give(page, { name: 'bent.svg', text: bent });
    await touchFirst(page);
    const leaf = await opened(page, 'Meets other seams');
    const words = async () => {
      const { block } = await kept(page);
      return (block.join ?? []).length + (block.split ?? []).length;
    };
    const here = leaf.getByLabel('This seam here').first();
    const options = () =>
      here.locator('option').evaluateAll((all) => all.map((one) => (one as HTMLOptionElement).value));
    await expect.poll(options, PATIENTLY).toContainEqual(expect.stringMatching(/^(split|join) /));
    const word = (await options()).find((value) => /^(split|join) /.test(value))!;
    await here.selectOption(word);
    await expect.poll(words, PATIENTLY).toBe(1);
    await sewsAlike(page);
    await page.keyboard.press('Escape');
    await page.locator('.table').focus();
    await page.keyboard.press('Control+z');
    await expect.poll(words, PATIENTLY).toBe(0);
    await page.context().close();
  });

  it('say of the block its hoop in mm and inch, size, turn, edge, ends, cloth, threads, hooping and machine', async () => {
    const { page } = await open();
    await give(page, { name: 'bent.svg', text: bent });

    const hoop = await opened(page, 'Hoop and size');
    await choose(hoop, 'Sewing field', '130x180');
    await hoop.getByRole('button', { name: 'Turn the hoop' }).click();
    expect((await kept(page)).hoop).toEqual({ width: 180, height: 130 });
    await page.getByLabel('Measured in').selectOption('inch');
    await choose(hoop, 'Sewing field', 'own');
    // what is half typed stays, though the page shows anew what else was changed
    await hoop.getByLabel('Across').fill('8');
    await hoop
      .getByRole('button', { name: 'A quarter to the left' })
      .evaluate((button: HTMLElement) => button.click());
    await isDressed(page);
    await hoop.getByLabel('Across').press('Tab');
    expect((await kept(page)).hoop!.width).toBeCloseTo(203.2, 6);
    await page.getByLabel('Measured in').selectOption('mm');
    await slide(hoop, 'Size of the block', 150);
    expect((await kept(page)).block).toMatchObject({ turn: 90, scale: 1.5 });
    await hoop.getByLabel('As large as the hoop takes').check();
    expect((await kept(page)).block.scale).toBe('hoop');

    const edges = await opened(page, 'Edge and ends');
    await choose(edges, 'The edge is', 'free');
    await choose(edges, 'A seam that butts in', 'bevel');
    await slide(edges, 'Clear cloth between', 1);
    await slide(edges, 'Satin wider by', 0.2);
    await slide(edges, 'Ends meet within', 0.5);
    await expect.poll(async () => (await kept(page)).block.snap, PATIENTLY).toBe(0.5);
    expect(await kept(page)).toMatchObject({ outline: 'free', ends: 'bevel', gap: 1, pull: 0.2 });

    const threads = await opened(page, 'Threads');
    await threads.getByLabel('Weight of thread 1').selectOption('No. 30');
    await threads.getByLabel('Name of thread 1').fill('Old gold silk');
    await threads.getByLabel('Name of thread 1').press('Tab');
    expect((await kept(page)).threads[0]).toMatchObject({ name: 'Old gold silk', weight: 'No. 30' });

    const hooping = await opened(page, 'Hooping');
    await hooping.getByLabel('First its outline on the stabilizer').check();
    await hooping.getByLabel('Then a box of long stitches round it').check();
    await slide(hooping, 'So far outside', 8);
    expect((await kept(page)).hooping).toEqual({ outline: true, basting: 8 });

    const machine = await opened(page, 'Machine');
    await slide(machine, 'Needles', 6);
    await slide(machine, 'Stitches a minute', 800);
    expect((await kept(page)).machine).toEqual({ needles: 6, stitchesPerMinute: 800 });

    const cloth = await opened(page, 'Cloth');
    await choose(cloth, 'It is', 'fine');
    expect(await cloth.locator('.aside').textContent()).toContain('4 times through one hole');
    await sewsAlike(page);
    await page.context().close();
  });

  it('of a stitch file: what is left out or kept clear, where new stops go in; its dressing knows it and says that it needs it', async () => {
    const { page } = await open();
    const bytes = piecedPanel();
    await give(page, { name: 'pieced.dst', text: Buffer.from(bytes) });
    const becomes = (stop: number) => page.getByLabel(`What becomes of stop ${stop}`, { exact: true });
    await becomes(1).selectOption('out');
    await becomes(2).selectOption('clear');
    expect(await kept(page)).toMatchObject({ block: { leaveOut: [1] }, keepClear: [{ stops: [2] }] });
    await becomes(2).selectOption('');
    await becomes(1).selectOption('');
    const last = await page.getByLabel('New stops go in').locator('option').last().getAttribute('value');
    await page.getByLabel('New stops go in').selectOption(last!);
    const dressing = await kept(page);
    expect(dressing.after).toBe(Number(last));
    expect(dressing.block.digest).toMatch(/^sha256:[0-9a-f]{64}$/);
    await sewsAlike(page, { name: 'pieced.dst', bytes });

    await page.getByText('To the machine').click();
    await page.getByText('opens only with pieced.dst beside it').waitFor();
    const names: string[] = [];
    page.on('download', (download) => names.push(download.suggestedFilename()));
    await page.getByRole('button', { name: 'The work and its block' }).click();
    await expect.poll(() => names.sort(), PATIENTLY).toEqual(['pieced.dressing.json', 'pieced.dst']);
    await page.context().close();
  });

  it('have nothing that an accessibility scan calls serious, all of them open, and are large enough for a finger', async () => {
    const { page } = await open({ viewport: { width: 820, height: 1180 } });
    await page.emulateMedia({ reducedMotion: 'reduce' });
    const openAll = () =>
      page.locator('.panel details').evaluateAll((all) => {
        for (const one of all) (one as HTMLDetailsElement).open = true;
      });
    const small = () =>
      page.locator('.panel :is(button, select, summary, input)').evaluateAll((all) =>
        all
          .filter((one) => {
            const high = [one, one.closest('label') ?? one].map((of) => of.getBoundingClientRect().height);
            return high[0] > 0 && Math.max(...high) < 40;
          })
          .map((one) => one.outerHTML.slice(0, 80)),
      );
    await openAll();
    expect(await seriousIn(page)).toEqual([]);
    expect(await small()).toEqual([]);
    await touchFirst(page);
    await openAll();
    await page.getByLabel('Add a row of').selectOption('blanket');
    await page.getByLabel('Add an accent').selectOption('daisy');
    await isDressed(page);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await seriousIn(page)).toEqual([]);
    }
    expect(await small()).toEqual([]);
    await page.context().close();
  });
});
