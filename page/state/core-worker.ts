import address from '../core/worker.ts?worker&url';

/** The core as a worker: it is packed in the page, and in none beside it while the page is being made. */
export async function startCore(): Promise<Worker> {
  const packed = document.getElementById('core');
  if (!packed) return new Worker(address, { type: 'module' });
  const bytes = Uint8Array.from(atob(packed.textContent), (letter) => letter.charCodeAt(0));
  const unpacked = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  const code = await new Response(unpacked).blob();
  return new Worker(URL.createObjectURL(new Blob([code], { type: 'text/javascript' })));
}
