/**
 * Draws every built-in stitch on a stretch of straight seam, to be held beside the plates of a handbook:
 * `npx tsx tests/stitches/plates.ts FOLDER`.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { parseStitch } from '../../src/stitches/parse.js';
import { type LaidLeg, layRow } from './lay-row.js';

const PX_PER_MM = 16;
const SEAM = 60;
const THREAD = 0.6;

const folder = process.argv[2];
if (!folder) throw new Error('give a folder for the pictures');
mkdirSync(folder, { recursive: true });
const motifs = new URL('../../motifs/stitches/', import.meta.url);
for (const file of readdirSync(motifs).filter((name) => name.endsWith('.json'))) {
  const stitch = parseStitch(readFileSync(new URL(file, motifs), 'utf8'), file.replace(/\.json$/, ''));
  const unit = stitch.build({});
  const count = Math.floor(SEAM / unit.length);
  const legs = layRow(unit, stitch.symmetry === 'glide', count);
  const half = Math.max(unit.reach.left, unit.reach.right) + 2;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-4 ${-half} ${SEAM + 8} ${2 * half}">
    <rect x="-4" y="${-half}" width="100" height="${2 * half}" fill="#5d4a57"/>
    <rect x="-4" y="0" width="100" height="${half}" fill="#4a5a52"/>
    <path d="M-4 0H100" stroke="#2c2430" stroke-width="0.15"/>
    ${threads([...legs.filter(behind), ...legs.filter((leg) => !behind(leg))])
      .map(drawn)
      .join('\n')}
  </svg>`;
  const png = new Resvg(svg, { fitTo: { mode: 'width', value: (SEAM + 8) * PX_PER_MM } }).render().asPng();
  writeFileSync(join(folder, `${stitch.name}.png`), png);
}

function behind(leg: LaidLeg): boolean {
  return leg.kind === 'under';
}

/** Visible legs that go on where the last one ended are one piece of thread. */
function threads(legs: readonly LaidLeg[]): LaidLeg[] {
  const pieces: LaidLeg[] = [];
  for (const leg of legs) {
    const last = pieces.at(-1);
    const goesOn =
      last && last.to === leg.from && last.from !== leg.to && last.kind !== 'under' && leg.kind !== 'under';
    if (goesOn) pieces[pieces.length - 1] = { ...last, to: leg.to, xy: [...last.xy, ...leg.xy] };
    else pieces.push(leg);
  }
  return pieces;
}

function drawn(leg: LaidLeg): string {
  const points = leg.xy.map(([x, y]) => `${x.toFixed(3)},${(-y).toFixed(3)}`).join(' ');
  const line = (stroke: string, width: number) =>
    `<polyline points="${points}" fill="none" stroke="${stroke}" stroke-width="${width}" stroke-linecap="round" stroke-linejoin="round"/>`;
  if (leg.kind === 'under') return line('#9a8f7c', 0.25);
  return line('#2a211c', THREAD + 0.16) + line('#f1e6cc', THREAD);
}
