import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Locator, type Page } from 'playwright-core';
import { build } from 'vite';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const found = [process.env.SEAMWRIGHT_BROWSER ?? '', ...PLACES].find((path) => path && existsSync(path));

/** Whether there is a browser to test the page in; and what the tests are called where there is none. */
export const hasBrowser = found !== undefined;
export const inBrowser = (title: string): string =>
  hasBrowser ? title : `${title} (skipped: no Chromium on this machine, looked for at ${PLACES.join(', ')})`;

const ROOT = join(import.meta.dirname, '../..');
/** What the page is built from. */
const SOURCES = ['page', 'src', 'motifs', 'gallery/demo', 'package-lock.json'];

/** The page, built from its sources as they are; one that was built from the same is taken as it lies. @returns its file */
export async function builtPage(): Promise<string> {
  const place = join(tmpdir(), `seamwright-page-${stampOf(SOURCES)}`);
  const file = join(place, 'seamwright.html');
  if (existsSync(file)) return file;
  const outDir = mkdtempSync(join(tmpdir(), 'seamwright-building-'));
  await build({ configFile: join(ROOT, 'page/vite.config.ts'), logLevel: 'silent', build: { outDir } });
  mkdirSync(place, { recursive: true });
  // whole or not at all: another worker may be looking for it
  renameSync(join(outDir, 'seamwright.html'), file);
  return file;
}

/** Another one whenever a file is changed, comes or goes. */
function stampOf(places: readonly string[]): string {
  const hash = createHash('sha256').update(ROOT);
  const look = (path: string): void => {
    const about = statSync(path);
    if (about.isDirectory()) for (const name of readdirSync(path).sort()) look(join(path, name));
    else hash.update(`${path} ${about.size} ${about.mtimeMs}\n`);
  };
  for (const place of places) look(join(ROOT, place));
  return hash.digest('hex').slice(0, 16);
}

/** What is to come on the page is waited for so long on a busy machine; for `expect.poll`. ms */
export const PATIENTLY = { timeout: 120_000, interval: 100 };

export const launched = (): Promise<Browser> =>
  chromium.launch({ executablePath: found, args: ['--no-sandbox'] });

/** A tab with the page, opened from disk and dressed; and every address that it ever asked for. */
export interface Opened {
  readonly page: Page;
  readonly asked: string[];
  readonly faults: string[];
}

/** @param how the browser is to be otherwise: a tablet, dark */
export async function openPage(
  browser: Browser,
  file: string,
  how: BrowserContextOptions = {},
): Promise<Opened> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    acceptDownloads: true,
    ...how,
  });
  context.setDefaultTimeout(PATIENTLY.timeout);
  return openTab(await context.newPage(), file);
}

export async function openTab(page: Page, file: string): Promise<Opened> {
  const asked: string[] = [];
  const faults: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
  await page.goto(pathToFileURL(file).href);
  await isDressed(page);
  return { page, asked, faults };
}

/** Waits until the core has nothing more to do. */
export async function isDressed(page: Page): Promise<void> {
  await page.locator('.busy').waitFor({ state: 'detached' });
  await page.locator('.facts[aria-busy="false"]').waitFor();
}

/** Where something lies on the screen once it stays there. */
export async function atRest(
  what: Locator,
): Promise<{ x: number; y: number; width: number; height: number }> {
  let last = await what.boundingBox();
  for (let same = 0; same < 3; ) {
    await new Promise((resolve) => setTimeout(resolve, 100));
    const next = await what.boundingBox();
    same = next && JSON.stringify(next) === JSON.stringify(last) ? same + 1 : 0;
    last = next;
  }
  return last!;
}

/** Gives files to the page as if they were chosen. */
export async function give(page: Page, ...files: { name: string; text: string | Buffer }[]): Promise<void> {
  await page.locator('input[type=file]').setInputFiles(
    files.map(({ name, text }) => ({
      name,
      mimeType: 'application/octet-stream',
      buffer: Buffer.from(text),
    })),
  );
  await page.locator('.file', { hasText: files[0].name.replace(/\.dressing\.json$/, '') }).waitFor();
  await isDressed(page);
}

/** Takes away what a line of the menu is called. */
export async function taken(page: Page, title: string): Promise<{ name: string; path: string }> {
  await page.getByText('To the machine').click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: title }).first().click(),
  ]);
  return { name: download.suggestedFilename(), path: await download.path() };
}
