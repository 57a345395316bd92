import type { Browser, BrowserContextOptions } from 'playwright-core';
import { afterAll, beforeAll, describe, vi } from 'vitest';
import { builtPage, hasBrowser, inBrowser, launched, type Opened, openPage } from './browser.js';

/** No test of the page fails because a machine is slow: it waits for what is to come, however long that takes. ms */
const PATIENCE = 600_000;

/** Tests that share one browser; without one they are skipped, and their title says so. */
export function describeInBrowser(
  title: string,
  tests: (open: (how?: BrowserContextOptions) => Promise<Opened>, file: () => string) => void,
): void {
  vi.setConfig({ testTimeout: PATIENCE, hookTimeout: PATIENCE });
  describe.skipIf(!hasBrowser)(inBrowser(title), () => {
    let browser: Browser;
    let file: string;
    beforeAll(async () => {
      [browser, file] = await Promise.all([launched(), builtPage()]);
    });
    afterAll(() => browser?.close());
    tests(
      (how) => openPage(browser, file, how),
      () => file,
    );
  });
}
