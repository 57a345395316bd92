import type { Block } from '../../src/block/block.js';
import { blockChanged } from '../../src/check/block-changed.js';
import { dress } from '../../src/dress.js';
import type { BlockSource, Dressing } from '../../src/formats/dressing.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import { benched, benchFindings, benchSamples } from './bench.js';
import { complaintOf } from './complaint.js';
import { bareBlock, emptyBlock, redraw } from './drawing.js';
import { drawnOf } from './drawn.js';
import { fabricsIn } from './fabrics-in.js';
import { FIRST_MIX, freshWork } from './fresh-work.js';
import { examined, lookOf } from './looks.js';
import { meetingsOf, withoutWishes } from './meetings.js';
import type { Answer, Asks, DrawnThread, GivenFile, Picture, Question, What } from './messages.js';
import { mixAgain } from './mix-again.js';
import { newsOf } from './news.js';
import { figuresOf, offersOf, tried } from './offers.js';
import { openFile } from './open-file.js';
import { outputOf } from './outputs.js';
import { ownRead, withOwn } from './own-stitches.js';
import { readBlock } from './read-block.js';
import { ReadBlocks } from './read-blocks.js';
import { numberedOn } from './renumber.js';
import { reread } from './reread.js';

type Handlers = { [W in What]: (ask: Asks[W]['ask']) => Promise<Asks[W]['answer']> };

/**
 * Answers what the page asks, one question after the other. It keeps the block's file, which is large and never changes,
 * and the block last read from it; all else comes with the question.
 */
export function deskOf(
  builtIn: Dictionary,
  fileOf: (name: string) => string,
): (question: Question) => Promise<Answer> {
  let held: GivenFile | null = null;
  const blocks = new ReadBlocks();
  let library = builtIn;
  let own: ReadonlySet<string> = new Set();
  let texts: ReadonlyMap<string, string> = new Map();
  let samples: Promise<Block> | null = null;
  /** threads of the last picture: most of the next one's are the same */
  const threads = new Map<string, DrawnThread>();

  const blockOf = (source: BlockSource): Promise<Block> => blocks.of(source, held);

  const pictureOf = async (dressing: Dressing): Promise<Picture> => {
    const block = await blockOf(dressing.block);
    return drawnOf(dress(block, dressing, library), block, threads);
  };

  const handlers: Handlers = {
    hold: async ({ file }) => {
      held = file;
      blocks.forget();
      return null;
    },
    open: async ({ file, beside, roles, seed }) => {
      const opened = await openFile(file, beside, new Map(roles));
      const block = await readBlock(opened.source, opened.file);
      if (opened.dressing) {
        return {
          dressing: numberedOn(opened.dressing, block.map),
          roles: null,
          why: [],
          findings: opened.isChanged
            ? [...block.findings, blockChanged(opened.dressing.block.file)]
            : block.findings,
        };
      }
      return freshWork(block, opened, library, seed);
    },
    dress: async ({ dressing }) => pictureOf(dressing),
    redress: async ({ dressing, has }) => newsOf(await pictureOf(dressing), has),
    mix: async ({ dressing, seed, lines }) =>
      mixAgain(await blockOf(dressing.block), dressing, library, {
        seed,
        seams: lines,
        ...(dressing.treatments.length === 0 && FIRST_MIX),
      }),
    offers: async () => offersOf(library, own),
    figures: async () => figuresOf(library),
    try: async ({ dressing, line, offer }) =>
      tried(await blockOf(dressing.block), dressing, line, offer, library),
    look: async ({ dressing, shown, unit, least }) =>
      lookOf(dress(await blockOf(dressing.block), dressing, library), shown, unit, least),
    examine: async ({ dressing }) => examined(dress(await blockOf(dressing.block), dressing, library)),
    meetings: async ({ dressing, line }) => {
      const { map } = await blockOf(withoutWishes(dressing.block));
      return meetingsOf(await blockOf(dressing.block), map, dressing, line);
    },
    reread: async ({ dressing, block }) => reread(dressing, block, blockOf),
    stitchFile: async ({ name }) => texts.get(name) ?? fileOf(name),
    own: async ({ stitches }) => {
      const shelved = await withOwn(builtIn, stitches);
      ({ library, own } = shelved);
      texts = new Map(stitches.map(({ name, text }) => [name, text]));
      return shelved.wrong;
    },
    readOwn: async ({ stitches }) => ownRead(stitches),
    bench: async ({ name, record }) => {
      samples ??= benchSamples();
      return benched(name, record, await samples, library);
    },
    benchFindings: async ({ name, record }) => benchFindings(name, record),
    bare: async ({ dressing }) => bareBlock(await blockOf(dressing.block), dressing),
    fabrics: async (asked) => fabricsIn(asked),
    empty: async ({ width, height }) => emptyBlock(width, height, library),
    redraw: async ({ dressing, drawing }) => redraw(dressing, drawing, blockOf),
    output: async ({ dressing, kind }) =>
      outputOf(await blockOf(dressing.block), dressing, kind, library, held),
  };

  return async ({ id, what, ask }) => {
    try {
      const handler = handlers[what] as (ask: unknown) => Promise<unknown>;
      return { id, answer: await handler(ask) };
    } catch (error) {
      return { id, complaint: complaintOf(error) };
    }
  };
}
