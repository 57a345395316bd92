import address from '../core/worker.ts?worker&url';

/** The core as a worker: it is packed in the page, and in none beside it while the page is being made. */
export function startCore(): Worker {
  const packed = document.getElementById('core');
  if (!packed) return new Worker(address, { type: 'module' });
  const worker = new Worker(addressOf(`(${unpack})()`));
  worker.postMessage(packed.textContent);
  return worker;
}

export const addressOf = (code: string): string =>
  URL.createObjectURL(new Blob([code], { type: 'text/javascript' }));

/**
 * Runs in the worker, so that the page does not wait for it: takes the packed core from the first message, begins it, and
 * gives it what was asked meanwhile.
 */
function unpack(): void {
  const asked: MessageEvent[] = [];
  let isFirst = true;
  self.onmessage = async (event: MessageEvent) => {
    asked.push(event);
    if (!isFirst) return;
    isFirst = false;
    const letters = atob(event.data as string);
    const bytes = new Uint8Array(letters.length);
    for (let i = 0; i < letters.length; i++) bytes[i] = letters.charCodeAt(i);
    const code = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
    const script = new Blob([await new Response(code).blob()], { type: 'text/javascript' });
    (self as unknown as { importScripts(address: string): void }).importScripts(URL.createObjectURL(script));
    for (const one of asked.slice(1)) self.onmessage!(one);
  };
}
