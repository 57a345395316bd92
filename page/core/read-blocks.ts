import type { Block } from '../../src/block/block.js';
import type { BlockSource } from '../../src/formats/dressing.js';
import type { GivenFile } from './messages.js';
import { readBlock } from './read-block.js';

/** While a line is dragged two blocks are asked for in turn: the one that it was taken on, and the one that it makes. */
const MOST = 3;

/** The blocks that were read last, so that none is read for every question about it. */
export class ReadBlocks {
  private known: readonly { readonly key: string; readonly block: Block }[] = [];

  /** @param held the file that a block is read from, where its source does not hold it */
  async of(source: BlockSource, held: GivenFile | null): Promise<Block> {
    // how it is placed and what is left out are done with the block as read
    const { scale: _, turn: __, leaveOut: ___, digest: ____, ...told } = source;
    const key = JSON.stringify(told);
    const found = this.known.find((one) => one.key === key);
    const read = found ?? { key, block: await readBlock(source, held) };
    this.known = [read, ...this.known.filter((one) => one.key !== key)].slice(0, MOST);
    return read.block;
  }

  /** Another file is held: what was read from the one before is of no use. */
  forget(): void {
    this.known = [];
  }
}
