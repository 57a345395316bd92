import type { Block } from '../../src/block/block.js';
import { defaultDressing } from '../../src/plan.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import type { Opened } from './messages.js';
import { mixAgain } from './mix-again.js';
import type { OpenedFile } from './open-file.js';

/** How a block is mixed that nothing has been worked on yet: in four threads. */
export const FIRST_MIX = { threads: 4, isNew: true } as const;

/** The first dressing of a block that came without one: the whole of it mixed from the library. */
export function freshWork(
  block: Block,
  { source, recognized }: Pick<OpenedFile, 'source' | 'recognized'>,
  library: Dictionary,
  seed: number,
): Opened {
  const bare = defaultDressing(block.map, {
    source,
    dictionary: library,
    seams: [],
    after: recognized?.after,
    seed,
  });
  const opened = mixAgain(block, bare, library, { seed, ...FIRST_MIX });
  return {
    ...opened,
    roles: recognized?.roles ?? null,
    findings: [...block.findings, ...opened.findings],
  };
}
