/** npm run gallery: draws every picture of the gallery anew, and its index. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import { dictionary } from '../stitches/dictionary.js';
import { fingerprint, gallery, pictures } from './pictures.js';

/** Wide enough to see the single threads, small enough for a page of them. */
const WIDTH = 800;

const drawn = await pictures();
mkdirSync(new URL('stitches/', gallery), { recursive: true });
for (const { path, svg } of drawn) {
  const fitTo = { mode: 'width', value: WIDTH } as const;
  writeFileSync(
    new URL(path, gallery),
    new Resvg(svg, { fitTo, font: { loadSystemFonts: false } }).render().asPng(),
  );
}
const prints = Object.fromEntries(drawn.map((picture) => [picture.path, fingerprint(picture)]));
writeFileSync(new URL('fingerprints.json', gallery), `${JSON.stringify(prints, null, 2)}\n`);

const entry = ({ name, title, use, otherNames }: (typeof dictionary)[number]) =>
  `## ${title}\n\n${use}${otherNames.length ? ` Also called ${otherNames.join(', ')}.` : ''}\n\n![${title}](stitches/${name}.png)\n`;
writeFileSync(
  new URL('README.md', gallery),
  `# Gallery\n\nDrawn by \`npm run gallery\`. The demo panel, then each stitch on a straight seam, a gentle curve and a corner.\n\n` +
    `![The demo panel, dressed](demo/panel.png)\n\n${dictionary.map(entry).join('\n')}`,
);
console.log(`${drawn.length} pictures drawn into gallery/`);
