import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { seamwright } from '../cli/run-cli.js';
import { PANEL_STOPS, piecedPanel } from '../fixtures/pieced-panel.js';
import { isDressed, PATIENTLY } from './browser.js';
import { describeInBrowser } from './in-browser.js';
import { keptDressings } from './stored.js';

describeInBrowser('a stitch file that is dropped', (open) => {
  it('is dressed on every seam without a question, and shows what each of its stops was taken for', async () => {
    const { page, faults } = await open();
    const bytes = piecedPanel();
    // held over the page, then let go, as a hand does it
    const files = await page.evaluateHandle((all) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([new Uint8Array(all)], 'pieced.dst'));
      return transfer;
    }, Array.from(bytes));
    await page.locator('.page').dispatchEvent('dragover', { dataTransfer: files });
    await page.getByText('Lay it down here').waitFor();
    await page.locator('.table').dispatchEvent('drop', { dataTransfer: files });
    await page.locator('.file', { hasText: 'pieced.dst' }).waitFor();
    await isDressed(page);
    expect(await page.getByText('Lay it down here').count()).toBe(0);
    expect(await page.getByRole('dialog').count()).toBe(0);
    expect(await page.getByRole('alert').count()).toBe(0);

    await expect.poll(async () => (await keptDressings(page)).length, PATIENTLY).toBe(1);
    const [{ treatments }] = await keptDressings(page);
    const folder = mkdtempSync(join(tmpdir(), 'seamwright-'));
    writeFileSync(join(folder, 'pieced.dst'), bytes);
    const { stdout } = await seamwright(folder, 'seams', 'pieced.dst', '--json');
    const seams = JSON.parse(stdout).seams.map(({ id }: { id: number }) => id);
    expect(treatments.map(({ seam }) => seam.id).sort((a, b) => Number(a) - Number(b))).toEqual(seams);

    const taken = page.locator('section', { has: page.getByRole('heading', { name: 'What the file sews' }) });
    const pictures = taken.locator('li canvas');
    expect(await pictures.count()).toBe(PANEL_STOPS.length);
    // no two stops of the same look: each picture is of its own stop
    const looks = await pictures.evaluateAll((all) =>
      all.map((one) => (one as HTMLCanvasElement).toDataURL()),
    );
    expect(new Set(looks).size).toBeGreaterThan(PANEL_STOPS.length / 2);
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
