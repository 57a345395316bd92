import { basename, dirname, relative, resolve, sep } from 'node:path';
import type { Dressed } from '../dress.js';
import type { DressReport } from '../report/dress-report.js';
import type { Named, Output } from './output-files.js';
import type { PictureOptions } from './picture-options.js';
import type { BlockFile } from './read-block.js';
import type { SheetAsked } from './render-sheet.js';

/** What `dress` can write, by the ending of its name. */
export const dressedEndings = [
  '.dst',
  '.svg',
  '.png',
  '.json',
  '.dressing.json',
  '.csv',
  '.txt',
  '.pdf',
] as const;
export type DressedEnding = (typeof dressedEndings)[number];

/** A dressing's files; null for a drawing that it holds itself, and for the usual library. */
export interface Places {
  readonly block: BlockFile | null;
  readonly library: string | null;
}

/** One output of the main job, whole and in memory. */
export async function renderDressed(
  dressed: Dressed,
  report: DressReport,
  { path, said, ending }: Named & { readonly ending: DressedEnding },
  places: Places,
  asked: PictureOptions & SheetAsked = {},
): Promise<Output> {
  return { path, said, content: await content() };

  async function content(): Promise<string | Uint8Array> {
    switch (ending) {
      case '.dst': {
        const { writeDesign } = await import('../design/write-design.js');
        return writeDesign(dressed.design);
      }
      case '.svg':
        return picture();
      case '.png': {
        const { rasterize } = await import('./rasterize.js');
        return rasterize(await picture());
      }
      case '.json': {
        const { needlePoints } = await import('../design/needle-points.js');
        return needlePoints(dressed.design);
      }
      case '.dressing.json': {
        const { writeDressing } = await import('../formats/dressing-text.js');
        const { digestOf } = await import('./digest.js');
        const { block, library } = places;
        return writeDressing({
          ...dressed.dressing,
          ...(library !== null && { library: seenFrom(path, library) }),
          block: {
            ...dressed.dressing.block,
            // the name that a drawing had says all there is to say, once the dressing holds it
            ...(dressed.dressing.block.svg === undefined
              ? block !== null && { file: seenFrom(path, block.path), digest: digestOf(block.bytes) }
              : { file: basename(dressed.dressing.block.file) }),
          },
        });
      }
      case '.csv': {
        const { stopsCsv } = await import('../report/stops-csv.js');
        return stopsCsv(report);
      }
      case '.txt': {
        const { dressText } = await import('../report/dress-text.js');
        return `${dressText(report)}\n`;
      }
      case '.pdf': {
        const { renderSheet } = await import('./render-sheet.js');
        return (await renderSheet(dressed, report, asked)).bytes;
      }
    }
  }

  async function picture(): Promise<string> {
    const { show, stop } = asked;
    if (show || stop) {
      const { dressedOverlays } = await import('./overlay-pictures.js');
      return dressedOverlays(dressed, asked, 'thread');
    }
    const { drawDressed } = await import('../draw/dressed-picture.js');
    return drawDressed(dressed);
  }
}

/** A path relative to the folder that the dressing is written to, with forward slashes on every system. */
const seenFrom = (path: string, blockPath: string): string =>
  relative(dirname(resolve(path)), resolve(blockPath))
    .split(sep)
    .join('/');
