import type { DrawnBlock, DrawnThread, Line, Picture } from '../core/messages.js';
import type { View } from '../state/view.js';

/** What is to be painted. Of block and threads only what was not in the painting before is sent. */
export interface ToPaint extends Pick<Picture, 'keptClear' | 'laid' | 'marks'> {
  readonly view: View;
  /** of the canvas, dots */
  readonly width: number;
  readonly height: number;
  /** of the screen to a pixel of the page */
  readonly dots: number;
  /** null for the one before */
  readonly block: DrawnBlock | null;
  /** threads from below, by their keys */
  readonly order: readonly string[];
  readonly threads: readonly DrawnThread[];
  readonly touched: Line | null;
  readonly isLook: boolean;
  /** nothing of the painting before is shown any more */
  readonly isFresh: boolean;
}
