import { gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

/**
 * Puts script, styles and workers into the page itself: from disk, a browser lets a page load nothing beside it. The core
 * is packed, since it is several times as large otherwise, and stands last: the page begins before it is read.
 */
export const oneFile = (): Plugin => ({
  name: 'one-file',
  enforce: 'post',
  generateBundle(_, bundle) {
    const page = bundle['index.html'];
    if (page?.type !== 'asset') return;
    const head: string[] = [];
    const body: string[] = [];
    let core = '';
    for (const [name, part] of Object.entries(bundle)) {
      if (part === page) continue;
      if (part.type === 'chunk') {
        body.push(`<script type="module" async>${inScript(part.code)}</script>`);
      } else if (name.endsWith('.css')) {
        head.push(`<style>${part.source}</style>`);
      } else if (/\bpainter\b.*\.js$/.test(name)) {
        head.push(`<script type="text/plain" id="painter">${inScript(String(part.source))}</script>`);
      } else if (name.endsWith('.js')) {
        const packed = gzipSync(part.source, { level: 9 }).toString('base64');
        core = `<script type="application/gzip" id="core">${packed}</script>`;
      } else continue;
      delete bundle[name];
    }
    page.source = String(page.source)
      .replace(/<script[^>]*src="[^"]*"[^>]*><\/script>/, '')
      .replace(/<link rel="stylesheet"[^>]*>/, '')
      .replace('</head>', (end) => [...head, end].join('\n'))
      .replace('</body>', (end) => [...body, core, end].join('\n'));
    page.fileName = 'seamwright.html';
  },
});

/** A script in the text of a script would end it. */
const inScript = (code: string): string =>
  code.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
