import { type Finding, lineName } from '../finding.js';
import type { Line } from './lines.js';
import { placeAt } from './walk.js';

/** What is to be told of a line's band: made smaller, pressed too much, or kept off an area. */
export function bandFindings(line: Line): Finding[] {
  const { ask, walk, scale, tight } = line;
  const seam = ask.seam;
  const title = ask.sized.stitch.title.toLowerCase();
  const findings: Finding[] = [];
  if (scale < 1 - 1e-9) {
    findings.push({
      level: 'note',
      code: 'made-smaller',
      message:
        `${lineName(seam)}: ${title} is made ${Math.round(scale * 100)} % of its size, because the seam bends tightly, ` +
        `runs close beside another${line.kept ? ' or what is kept clear' : ''} or meets it at a sharp angle; a narrower ` +
        'stitch here gives it more room',
      seam,
      at: placeAt(walk, walk.guide.length / 2),
    });
  }
  for (const beside of [false, true]) {
    const parts = tight.filter((part) => part.kept === null && part.beside === beside);
    if (parts.length === 0) continue;
    const bare = parts.reduce((sum, { from, to }) => sum + to - from, 0);
    findings.push({
      level: 'warning',
      code: beside ? 'close-beside' : 'tight-bend',
      message:
        `${lineName(seam)}: ${title} is not worked on ${bare.toFixed(1)} mm where ` +
        (beside
          ? 'another treatment runs too close beside it; narrower stitches on both, or one of them left bare, would do'
          : 'the seam bends too tightly for its smallest good size; a narrower stitch would go round'),
      seam,
      at: placeAt(walk, (parts[0].from + parts[0].to) / 2),
    });
  }
  for (const name of new Set(tight.flatMap(({ kept }) => kept ?? []))) {
    const parts = tight.filter(({ kept }) => kept === name);
    const bare = parts.reduce((sum, { from, to }) => sum + to - from, 0);
    findings.push({
      level: 'note',
      code: 'kept-clear',
      message: `${lineName(seam)}: ${title} leaves ${bare.toFixed(1)} mm bare to keep ${name} clear`,
      seam,
      at: placeAt(walk, (parts[0].from + parts[0].to) / 2),
    });
  }
  return findings;
}
