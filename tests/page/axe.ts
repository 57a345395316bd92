import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe-core calls serious or critical on the page as it stands: the rule, and where. */
export async function seriousIn(page: Page): Promise<string[]> {
  return page.evaluate(async (source) => {
    // the scan is no part of the page: it comes in from outside, as by a debugger
    const { axe: scan } = new Function(`${source}; return { axe: this.axe ?? window.axe }`).call(window);
    const { violations } = await scan.run(document, { resultTypes: ['violations'] });
    return violations
      .filter(({ impact }: { impact: string }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }: { id: string; nodes: { html: string }[] }) =>
        nodes.map(({ html }) => `${id}: ${html.slice(0, 120)}`),
      );
  }, axe);
}
