import type { Page } from 'playwright-core';
import type { Dressing } from '../../src/formats/dressing.js';

/** All that lies in a store of the browser, as the page wrote it; nothing where the page has written nothing yet. */
export const storedIn = <T>(page: Page, database: string, store: string): Promise<T[]> =>
  page.evaluate(`(async () => {
    if (!(await indexedDB.databases()).some(({ name }) => name === '${database}')) return [];
    const settled = (asked) => new Promise((resolve) => { asked.onsuccess = () => resolve(asked.result); });
    const opened = await settled(indexedDB.open('${database}'));
    try {
      if (![...opened.objectStoreNames].includes('${store}')) return [];
      return await settled(opened.transaction('${store}').objectStore('${store}').getAll());
    } finally { opened.close(); }
  })()`);

/** The dressings of all pieces of work that are kept, the latest last. */
export async function keptDressings(page: Page): Promise<Dressing[]> {
  const all = await storedIn<{ changedAt: number; work: { dressing: Dressing } }>(
    page,
    'seamwright',
    'works',
  );
  return all.sort((a, b) => a.changedAt - b.changedAt).map(({ work }) => work.dressing);
}

/** How wide the first treatment is in each piece of work that is kept. */
export const keptWidths = async (page: Page): Promise<number[]> =>
  (await keptDressings(page)).map(({ treatments }) => treatments[0].rows[0].parameters.width);
