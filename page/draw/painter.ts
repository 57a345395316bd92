import type { DrawnBlock, DrawnThread } from '../core/messages.js';
import type { ToPaint } from './painting.js';
import { Sheet } from './sheet.js';
import { lyingOn } from './table.js';

let sheet = new Sheet();
let block: DrawnBlock | null = null;
let threads = new Map<string, DrawnThread>();

// A worker of its own: drawing takes longer than a frame, and neither the page nor the core is to wait for it.
self.onmessage = async ({ data }: MessageEvent<ToPaint>) => {
  const { view, width, height, dots, order } = data;
  if (data.isFresh) sheet = new Sheet();
  block = data.block ?? block;
  const known = new Map([...threads, ...data.threads.map((one) => [one.key, one] as const)]);
  threads = new Map(order.map((key) => [key, known.get(key)!]));
  const lying = lyingOn({ ...data, block: block!, threads: [...threads.values()] }, dots, view.scale);
  const frame = { width, height, scale: dots * view.scale, x: dots * view.x, y: dots * view.y };
  const bitmap = sheet.draw(frame, lying) ? await createImageBitmap(sheet.canvas) : null;
  self.postMessage(bitmap, { transfer: bitmap ? [bitmap] : [] });
};
