import type { Browser, BrowserContextOptions } from 'playwright-core';
import { afterAll, beforeAll, describe } from 'vitest';
import { builtPage, hasBrowser, inBrowser, launched, type Opened, openPage } from './browser.js';

/** Tests that share one browser; without one they are skipped, and their title says so. */
export function describeInBrowser(
  title: string,
  tests: (open: (how?: BrowserContextOptions) => Promise<Opened>, file: () => string) => void,
): void {
  describe.skipIf(!hasBrowser)(inBrowser(title), () => {
    let browser: Browser;
    let file: string;
    beforeAll(async () => {
      [browser, file] = await Promise.all([launched(), builtPage()]);
    }, 60_000);
    afterAll(() => browser?.close());
    tests(
      (how) => openPage(browser, file, how),
      () => file,
    );
  });
}
