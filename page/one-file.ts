import type { Plugin } from 'vite';

/** Puts script and styles into the page itself: from disk, a browser lets a page load no module beside it. */
export const oneFile = (): Plugin => ({
  name: 'one-file',
  enforce: 'post',
  generateBundle(_, bundle) {
    const page = bundle['index.html'];
    if (page?.type !== 'asset') return;
    let html = String(page.source);
    for (const [name, part] of Object.entries(bundle)) {
      if (part.type === 'chunk') {
        const tag = new RegExp(`<script[^>]*src="[^"]*${part.fileName}"[^>]*></script>`);
        html = html.replace(tag, () => '');
        // a script in the text of a script would end it
        const code = part.code.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
        html = html.replace('</body>', () => `<script type="module">${code}</script>\n</body>`);
      } else if (name.endsWith('.css')) {
        html = html.replace(
          new RegExp(`<link[^>]*href="[^"]*${name}"[^>]*>`),
          () => `<style>${part.source}</style>`,
        );
      } else continue;
      delete bundle[name];
    }
    page.source = html;
    page.fileName = 'seamwright.html';
  },
});
