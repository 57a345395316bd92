import { useEffect, useRef } from 'preact/hooks';
import type { DrawnBlock, DrawnThread } from '../core/messages.js';
import { drawStopPicture } from '../draw/stop-picture.js';

interface Pictured {
  readonly block: DrawnBlock;
  readonly thread?: DrawnThread;
  /** what the block's own file sews */
  readonly runs?: readonly Float64Array[];
}

/** One color stop on the block, small. */
export function ThreadPicture({ block, thread, runs }: Pictured) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => drawStopPicture(canvas.current!, block, thread ?? null, runs ?? []), [block, thread, runs]);
  return <canvas ref={canvas} class="stop-picture" width={1} height={1} />;
}
