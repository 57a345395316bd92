import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** An independent reader of PDF; where it is not installed its checks are skipped, with the reason. */
export const hasPoppler = spawnSync('pdftoppm', ['-v']).status === 0;
if (!hasPoppler) console.warn('skipped: what poppler-utils (pdftoppm, pdftotext, pdfinfo) would look at');

/** Runs a tool of poppler on a document; its output as bytes. */
function onDocument(
  pdf: Uint8Array,
  command: string,
  before: readonly string[],
  after: readonly string[],
): Buffer {
  const folder = mkdtempSync(join(tmpdir(), 'seamwright-pdf-'));
  try {
    const path = join(folder, 'a.pdf');
    writeFileSync(path, pdf);
    return execFileSync(command, [...before, path, ...after], { maxBuffer: 1 << 28 });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Text of each page, laid out as it stands. */
export const pageTexts = (pdf: Uint8Array): string[] =>
  onDocument(pdf, 'pdftotext', ['-layout'], ['-'])
    .toString('utf8')
    .replaceAll('\u00a0', ' ')
    .split('\f')
    .slice(0, -1);

/** What is told of a document: 'Pages' 2, 'Page size' 595.276 x 841.89 pts (A4). */
export function pdfInfo(pdf: Uint8Array): ReadonlyMap<string, string> {
  const lines = onDocument(pdf, 'pdfinfo', [], []).toString('utf8').split('\n');
  return new Map(lines.map((line) => [line.split(':')[0], line.slice(line.indexOf(':') + 1).trim()]));
}

/** A page as gray values, 0 black to 255 white, row by row. */
export interface GrayPage {
  readonly width: number;
  readonly height: number;
  readonly values: Uint8Array;
}

/** A page from 1 as a printer without color shows it. */
export function grayPage(pdf: Uint8Array, page: number, dpi: number): GrayPage {
  const which = ['-gray', '-r', String(dpi), '-f', String(page), '-l', String(page), '-singlefile'];
  const file = onDocument(pdf, 'pdftoppm', which, []);
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(file.subarray(0, 40).toString('latin1'))!;
  return {
    width: Number(head[1]),
    height: Number(head[2]),
    values: new Uint8Array(file.subarray(head[0].length)),
  };
}

/** Lengths of the stretches of dark in a row of a page, left to right. */
export function darkStretches({ width, values }: GrayPage, row: number): number[] {
  const lengths: number[] = [];
  let length = 0;
  for (let x = 0; x <= width; x++) {
    if (x < width && values[row * width + x] < 128) length++;
    else if (length > 0) {
      lengths.push(length);
      length = 0;
    }
  }
  return lengths;
}
