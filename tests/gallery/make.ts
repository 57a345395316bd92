/** npm run gallery: draws every picture of the gallery anew, and its index. Names after it draw those alone. */
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import sharp from 'sharp';
import { index } from './index-page.js';
import { fingerprint, gallery, pictures } from './pictures.js';

/** Wide enough to see the single threads, small enough for a page of them. */
const WIDTH = 950;

const wanted = process.argv.slice(2);
const all = pictures();
const drawn = all.filter(
  ({ path }) => wanted.length === 0 || wanted.some((name) => path.includes(`/${name}.`)),
);
for (const shelf of ['stitches', 'ornaments', 'treatments']) {
  const folder = new URL(`${shelf}/`, gallery);
  mkdirSync(folder, { recursive: true });
  for (const file of readdirSync(folder)) {
    if (!all.some(({ path }) => path === `${shelf}/${file}`)) rmSync(new URL(file, folder));
  }
}
const list = new URL('fingerprints.json', gallery);
const known = new Map<string, string>(
  wanted.length ? Object.entries(JSON.parse(readFileSync(list, 'utf8'))) : [],
);
for (const { path, draw } of drawn) {
  const svg = await draw();
  known.set(path, fingerprint(svg));
  const fitTo = { mode: 'width', value: WIDTH } as const;
  const png = new Resvg(svg, { fitTo, font: { loadSystemFonts: false } }).render().asPng();
  writeFileSync(
    new URL(path, gallery),
    await sharp(png).png({ palette: true, colors: 128, effort: 7 }).toBuffer(),
  );
}
const prints = Object.fromEntries(all.map(({ path }) => [path, known.get(path)]));
writeFileSync(list, `${JSON.stringify(prints, null, 2)}\n`);
writeFileSync(new URL('README.md', gallery), index());
console.log(`${drawn.length} pictures drawn into gallery/`);
