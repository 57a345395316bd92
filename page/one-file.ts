import { gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

/**
 * Puts script, styles and the core into the page itself: from disk, a browser lets a page load nothing beside it. The core
 * is packed, since it is several times as large otherwise.
 */
export const oneFile = (): Plugin => ({
  name: 'one-file',
  enforce: 'post',
  generateBundle(_, bundle) {
    const page = bundle['index.html'];
    if (page?.type !== 'asset') return;
    let html = String(page.source);
    const before = (end: string, text: string) => {
      html = html.replace(end, () => `${text}\n${end}`);
    };
    for (const [name, part] of Object.entries(bundle)) {
      if (part === page) continue;
      if (part.type === 'chunk') {
        html = html.replace(/<script[^>]*src="[^"]*"[^>]*><\/script>/, '');
        // a script in the text of a script would end it
        const code = part.code.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
        before('</body>', `<script type="module">${code}</script>`);
      } else if (name.endsWith('.css')) {
        html = html.replace(/<link rel="stylesheet"[^>]*>/, '');
        before('</head>', `<style>${part.source}</style>`);
      } else if (name.endsWith('.js')) {
        const packed = gzipSync(part.source, { level: 9 }).toString('base64');
        before('</head>', `<script type="application/gzip" id="core">${packed}</script>`);
      } else continue;
      delete bundle[name];
    }
    page.source = html;
    page.fileName = 'seamwright.html';
  },
});
