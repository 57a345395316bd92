import type { Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { seriousIn } from './axe.js';
import { give, isDressed } from './browser.js';
import { describeInBrowser } from './in-browser.js';
import { dragged, kept, sewsAlike, unfolded } from './sews-alike.js';

/** Seam 1 runs down; others butt into it from both sides. */
const crossed = `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="100mm" viewBox="0 0 120 100">
  <path fill="#6d4670" d="M0 0H60V50H0Z"/><path fill="#3f8078" d="M0 50H60V100H0Z"/>
  <path fill="#d9c7a0" d="M60 0H120V60H60Z"/><path fill="#8c2f3f" d="M60 60H120V100H60Z"/></svg>`;

/** One seam, with a right angle in it. */
const cornered = `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="100mm" viewBox="0 0 120 100">
  <path fill="#6d4670" d="M0 0H120V40H50V100H0Z"/><path fill="#3f8078" d="M50 40H120V100H50Z"/></svg>`;

const slow = { timeout: 120_000, interval: 100 };

async function touch(page: Page, nth: number): Promise<void> {
  await page.locator('.table').focus();
  for (let i = 0; i < nth; i++) await page.keyboard.press('ArrowRight');
}

/** The table, and where a share of it lies on the screen. */
async function onTable(page: Page): Promise<(x: number, y: number) => [number, number]> {
  const room = (await page.locator('.table').boundingBox())!;
  return (x, y) => [room.x + x * room.width, room.y + y * room.height];
}

describeInBrowser('what is worked on the table itself', (open) => {
  it('a junction that is touched shows who runs through it, and lets others, by pointer and by keys', async () => {
    const { page, faults } = await open();
    await give(page, { name: 'crossed.svg', text: crossed });
    await touch(page, 1);
    const marks = page.getByRole('button', { name: /^Where it meets/ });
    await expect.poll(() => marks.count(), slow).toBeGreaterThan(0);
    await marks.first().click();
    const card = page.getByRole('region', { name: /^Where it meets/ });
    await card.waitFor();
    expect(await page.locator('.arms .runs').count()).toBe(2);
    expect(await page.locator('.arm-plate').count()).toBe(3);
    expect(await seriousIn(page)).toEqual([]);

    const words = async () => {
      const { block } = await kept(page);
      return (block.join ?? []).length + (block.split ?? []).length;
    };
    const here = card.getByLabel('This seam here');
    const split = here.locator('option', { hasText: 'two seams' });
    await here.selectOption((await split.getAttribute('value'))!);
    await expect.poll(words, slow).toBe(1);
    await expect.poll(() => page.locator('.arms .runs').count(), slow).toBe(0);
    await sewsAlike(page);

    await page.locator('.table').focus();
    await page.keyboard.press('Control+z');
    await expect.poll(words, slow).toBe(0);
    // and by keys alone
    await page.keyboard.press('Escape');
    await touch(page, 1);
    await expect.poll(() => marks.count(), slow).toBeGreaterThan(0);
    await marks.first().focus();
    await page.keyboard.press('Enter');
    await card.waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('SELECT');
    await page.keyboard.press('Escape');
    await card.waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('each end of a seam is made in its own manner, and the cloth left there is dragged', async () => {
    const { page } = await open();
    await give(page, { name: 'crossed.svg', text: crossed });
    // the second seam butts into the first at one of its ends
    await touch(page, 2);
    const marks = page.getByRole('button', { name: /^Where it meets/ });
    await expect.poll(() => marks.count(), slow).toBe(1);
    await marks.first().click();
    const ends = page.getByRole('region', { name: /^Where it meets/ }).getByLabel(/^It ends at seam/);
    await ends.selectOption('short');
    const said = async () => (await kept(page)).treatments.find(({ seam }) => seam.id === 2)!.ends;
    await expect.poll(said, slow).toSatisfy((now) => Array.isArray(now) && now.includes('short'));
    expect(await said()).toContain(null);

    await page.getByText('More about this seam').click();
    await unfolded(page, 'Ends, corners, side');
    await isDressed(page);
    const gap = page.getByRole('slider', { name: 'Clear cloth between, all over the block' });
    await gap.focus();
    for (let i = 0; i < 9; i++) await page.keyboard.press('ArrowRight');
    expect((await kept(page)).gap).toBeCloseTo(1.5, 9);
    await sewsAlike(page);
    await page.context().close();
  });

  it('rows, waves, side and growth have handles on the seam once more is asked about it; each is undone', async () => {
    const { page, faults } = await open();
    await give(page, { name: 'crossed.svg', text: crossed });
    await touch(page, 1);
    await isDressed(page);
    expect(await page.locator('.handle.mark').count()).toBe(0);
    await page.getByText('More about this seam').click();
    const guide = await unfolded(page, 'Guide line');
    await guide.getByLabel('It follows').selectOption('wave');
    const rows = await unfolded(page, 'Rows');
    await rows.getByLabel('Add a row of').selectOption('fly');
    await isDressed(page);
    const seam = async () => (await kept(page)).treatments.find(({ seam: { id } }) => id === 1)!;
    const before = await seam();

    const byHand = async (what: Locator, dx: number, dy: number) => {
      await dragged(page, what, dx, dy);
      await isDressed(page);
    };
    await byHand(page.getByRole('slider', { name: 'Row 2 off the seam' }), 20, -20);
    const offset = (await seam()).rows[1].offset;
    expect(Math.abs(offset)).toBeGreaterThan(0.5);
    await page.keyboard.press('Control+z');
    expect((await seam()).rows[1].offset).toBe(before.rows[1].offset);

    const accents = await unfolded(page, 'Accents');
    await accents.getByLabel('Add an accent').selectOption('daisy');
    await isDressed(page);
    const accent = async () => (await seam()).accents![0];
    const size = page.getByRole('slider', { name: 'Size of accent 1' });
    await size.focus();
    const large = Number(await size.getAttribute('aria-valuenow'));
    await page.keyboard.press('ArrowRight');
    expect((await accent()).parameters.size).toBeCloseTo(large + 0.1, 9);
    const off = (await accent()).away ?? 0;
    await page.getByRole('slider', { name: 'Accent 1 off its seat' }).focus();
    await page.keyboard.press('ArrowUp');
    expect((await accent()).away).toBeCloseTo(off + 0.1, 9);

    const high = page.getByRole('slider', { name: 'How high its waves are' });
    await high.focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    expect((await seam()).guide).toMatchObject({ height: before.guide!.height + 1 });
    await page.getByRole('slider', { name: 'How long one wave is' }).focus();
    await page.keyboard.press('ArrowRight');
    expect((await seam()).guide).toMatchObject({ length: before.guide!.length + 1 });

    await unfolded(page, 'Ends, corners, side');
    await page.getByRole('button', { name: /^It stands to the/ }).click();
    expect((await seam()).side).toMatch(/left|right/);
    await page.getByRole('button', { name: /^It grows/ }).click();
    expect((await seam()).reverse).toBe(!before.reverse);
    expect(await seriousIn(page)).toEqual([]);
    await sewsAlike(page);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('a sharp corner of a seam has a mark: each touch goes to the next way round it', async () => {
    const { page } = await open();
    await give(page, { name: 'cornered.svg', text: cornered });
    await touch(page, 1);
    await page.getByText('More about this seam').click();
    await unfolded(page, 'Ends, corners, side');
    const corner = page.getByRole('button', { name: /^Corner 1/ });
    const met = new Set<string | undefined>();
    for (let i = 0; i < 3; i++) {
      await corner.click();
      met.add((await kept(page)).treatments[0].corner);
    }
    expect(met).toEqual(new Set(['turn', 'round', 'break']));
    await sewsAlike(page);
    await page.context().close();
  });

  it('a shape that stays clear is drawn, dragged corner by corner and as a whole, and taken off, by touch and by keys', async () => {
    const { page, faults } = await open({ hasTouch: true });
    await give(page, { name: 'crossed.svg', text: crossed });
    await page.getByRole('button', { name: 'Draw its shape' }).click();
    const at = await onTable(page);
    const set = (x: number, y: number) => page.touchscreen.tap(...at(x, y));
    await set(0.4, 0.4);
    await set(0.6, 0.38);
    await set(0.58, 0.6);
    await set(0.4, 0.4);
    const shape = async () => (await kept(page)).keepClear?.[0]?.polygon;
    expect(await shape()).toHaveLength(3);
    await isDressed(page);
    await sewsAlike(page);

    const drawn = (await shape())!;
    await dragged(page, page.getByRole('button', { name: /^kept clear 1, corner 2/ }), 30, -10);
    const moved = (await shape())!;
    expect(moved[1][0]).toBeGreaterThan(drawn[1][0] + 2);
    expect([moved[0], moved[2]]).toEqual([drawn[0], drawn[2]]);

    await dragged(
      page,
      page.getByRole('button', { name: /^kept clear 1, a corner behind corner 1/ }),
      0,
      -40,
    );
    expect(await shape()).toHaveLength(4);
    await page.keyboard.press('Control+z');
    expect(await shape()).toEqual(moved);

    const whole = page.getByRole('button', { name: /^kept clear 1: drag/ });
    await whole.focus();
    await page.keyboard.press('ArrowRight');
    expect((await shape())!.map(([x]) => x)).toEqual(moved.map(([x]) => Math.round(10 * (x + 1)) / 10));
    await whole.press('Delete');
    expect((await kept(page)).keepClear).toEqual([]);

    // by keys: a cross goes about, Enter sets corners, twice at one place closes
    await page.getByRole('button', { name: 'Draw its shape' }).press('Enter');
    await page.locator('.table').focus();
    for (const key of [
      'ArrowRight',
      'Enter',
      'ArrowDown',
      'ArrowDown',
      'Enter',
      'ArrowLeft',
      'Enter',
      'Enter',
    ])
      await page.keyboard.press(key);
    const keyed = (await shape())!;
    expect(keyed).toHaveLength(3);
    expect(keyed[1][1] - keyed[0][1]).toBeCloseTo(10, 1);
    expect(keyed[1][0] - keyed[2][0]).toBeCloseTo(5, 1);
    expect(await seriousIn(page)).toEqual([]);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('a thread is taken away, and what is sewn in it goes to the one that is named', async () => {
    const { page } = await open();
    const before = await kept(page);
    const threads = await unfolded(page, 'Threads');
    await threads.getByRole('button', { name: 'Take thread 1 away' }).click();
    const [gone, other] = before.threads;
    await threads.getByRole('button', { name: `Sew them in ${other.name}, thread 2` }).click();
    await isDressed(page);
    const after = await kept(page);
    expect(after.threads).toEqual(before.threads.slice(1));
    const names = ({ treatments, threads: all }: typeof before) =>
      treatments.flatMap(({ rows }) => rows.map(({ thread }) => all[thread].name));
    expect(names(after)).toEqual(names(before).map((name) => (name === gone.name ? other.name : name)));
    await sewsAlike(page);
    await page.locator('.table').focus();
    await page.keyboard.press('Control+z');
    expect((await kept(page)).threads).toEqual(before.threads);
    await page.context().close();
  });
});
