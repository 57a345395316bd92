import { numberRanges } from '../../block/line-list.js';
import type { SeamMap } from '../../block/seam-map.js';
import { span } from '../../check/contrast/contrast-findings.js';
import { fabricOfPatch } from '../../check/contrast/thread-contrast.js';
import { CLEAR, contrast, SEEN } from '../../color/contrast.js';
import { lineName } from '../../finding.js';
import { besideLine } from '../../geometry/beside-line.js';
import { type Box, boxAt } from '../../geometry/box.js';
import { cumulativeLength, type Points } from '../../geometry/polyline.js';
import { partOf, pointAtLength, segmentAt } from '../../geometry/polyline-part.js';
import { darkPlate, darkPlateSize, plateLeads } from '../number-plates.js';
import { traceLine } from '../pen.js';
import { type Place, type Plate, plateRoom } from '../plate-room.js';
import { element, type Frame, title } from '../svg.js';
import { pathData } from '../svg-pen.js';
import { type ContrastStretch, contrastStretches, type ShownContrast } from './contrast-stretches.js';
import type { LegendEntry } from './legend.js';
import type { Overlay } from './overlay.js';

type Look = ContrastStretch['verdict'];
const LOOKS: readonly Look[] = ['clear', 'visible', 'lost'];

/** Threads below this are at the most only just visible, and told by their number too. Our own choice. */
const JUST_SEEN = 2;
/** From the seam to the middle of the first mark beside it, and from one mark to the next, mm. */
const FIRST = 1.5;
const LANE = 2;
/** Of a band, mm; from one of its hatches to the next, and how far they lean. */
const BAND = 1.5;
const HATCH = 1.1;
const LEAN = 0.45;
/** Marks stop so far from the ends of their stretch, mm, so that those round a junction do not run into each other. */
const SHORT = 2;

const LOST = '#d55e00';
const INK = '#22313f';
const LIGHT = '#ffffff';

/** Clear cloth between two numbers, in heights of their letters. */
const APART = 0.12;
/** A number is moved aside by at most so many of its own sizes. */
const FURTHEST = 8;
/** Where along a stretch its number may stand, the best first. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];

/** What the marks lie on. */
interface Ground {
  readonly frame: Frame;
  /** height of the numbers is 0.85 of it, mm */
  readonly size: number;
  /** what no number may lie over, mm */
  readonly taken?: readonly Box[];
  /** whether fabrics are drawn pale */
  readonly isPale?: boolean;
}

/** How the threads show on the fabrics on both sides of their lines, as the contrast check measured it. */
export function contrastOverlay(
  map: SeamMap,
  contrasts: readonly ShownContrast[],
  { frame, size, taken = [], isPale = false }: Ground,
): Overlay {
  const marks = contrastStretches(map, contrasts)
    // what shows least lies over all else
    .sort((a, b) => LOOKS.indexOf(a.verdict) - LOOKS.indexOf(b.verdict))
    .map((stretch) => ({ stretch, line: lineOfMark(stretch) }));
  const numbered = marks.filter(({ stretch: { ratio } }) => ratio < JUST_SEEN);
  const plates = numbered.map(({ stretch, line }) => plateOf(stretch, line, size));
  const spots = plateRoom(plates, { clear: APART * size, within: frame, taken, furthest: FURTHEST });
  const laid = spots.flatMap((spot, i) => (spot ? [{ ...plates[i], at: spot.at }] : []));
  return {
    picture: marks
      .map(({ stretch, line }) => markPicture(stretch, line, isPale ? INK : standingOut(map, stretch)))
      .join(''),
    labels:
      plateLeads(spots, size) +
      laid
        .map(({ text, at }) => element('g', {}, title(`contrast ${text}`), darkPlate(text, at, size)))
        .join(''),
    taken: laid.map(({ at, width, height }) => boxAt(at, width, height)),
    part: {
      heading: headingOf(map, marks.length),
      entries: entriesOf(
        map,
        marks.map(({ stretch }) => stretch),
      ),
    },
  };
}

/** Where a mark runs: beside its stretch, short of both ends. */
function lineOfMark({ part, hand, lane, line }: ContrastStretch): Points {
  const away = (line === null ? 0 : FIRST) + lane * LANE;
  const beside = besideLine(part, hand === 'left' ? away : -away);
  if (line === null) return beside;
  const along = cumulativeLength(beside);
  const long = along[along.length - 1];
  const short = Math.min(SHORT, long / 4);
  return partOf(beside, along, short, long - short);
}

/** Light or dark, whichever is seen better on the fabric of a stretch. */
function standingOut({ patches }: SeamMap, { patch }: ContrastStretch): string {
  const [{ hex }] = fabricOfPatch(patches[patch - 1])!.colors;
  return contrast(hex, LIGHT) > contrast(hex, INK) ? LIGHT : INK;
}

/** A ratio as it is written everywhere, cut off so that none reads as if it were on a limit. */
const written = (ratio: number): string => span(ratio, ratio);

const TOLD: Readonly<Record<Look, string>> = { clear: 'clear', visible: 'visible', lost: 'melting' };

function markPicture(stretch: ContrastStretch, line: Points, quiet: string): string {
  const { line: of, thread, patch, ratio, verdict } = stretch;
  const where = of === null ? 'an ornament' : lineName(of);
  return element(
    'g',
    { fill: 'none', 'stroke-linejoin': 'round' },
    title(
      `${where}, ${thread.name || thread.hex} on patch ${patch}: contrast ${written(ratio)}, ${TOLD[verdict]}`,
    ),
    lookOf(verdict, line, quiet),
  );
}

/**
 * The look of each verdict along a line: none of them needs its color to be told.
 * @param quiet color of a line that is to be seen, and no more, on what lies there
 */
function lookOf(verdict: Look, line: Points, quiet: string): string {
  const d = pathData((pen) => traceLine(pen, line));
  if (verdict === 'clear') {
    return stroke(d, quiet, 0.25);
  }
  if (verdict === 'visible') {
    return stroke(d, LIGHT, 0.9) + stroke(d, INK, 0.5, { 'stroke-dasharray': '1.6 1' });
  }
  return stroke(d, LIGHT, BAND + 0.6) + stroke(d, LOST, BAND) + stroke(hatches(line), INK, 0.4);
}

const stroke = (d: string, color: string, width: number, more = {}): string =>
  element('path', { d, stroke: color, 'stroke-width': width, ...more });

/** Leaning strokes across a band. */
function hatches(line: Points): string {
  const along = cumulativeLength(line);
  const long = along[along.length - 1];
  const many = Math.max(1, Math.floor(long / HATCH));
  return pathData((pen) => {
    for (let i = 0; i < many; i++) {
      const { at, across } = acrossAt(line, along, ((i + 0.5) / many) * long);
      const [nx, ny] = [(across[0] * BAND) / 2, (across[1] * BAND) / 2];
      const [tx, ty] = [across[1] * LEAN, -across[0] * LEAN];
      pen.move(at[0] - nx - tx, at[1] - ny - ty);
      pen.line(at[0] + nx + tx, at[1] + ny + ty);
    }
  });
}

/** A place on a line and the way to its left there, of length 1. */
function acrossAt(line: Points, along: Float64Array, u: number): { at: Place; across: Place } {
  const i = 2 * segmentAt(along, u);
  const [dx, dy] = [line[i + 2] - line[i], line[i + 3] - line[i + 1]];
  const long = Math.hypot(dx, dy) || 1;
  return { at: pointAtLength(line, along, u), across: [dy / long, -dx / long] };
}

/** The number of a stretch, beside its mark and further from the seam. */
function plateOf({ ratio, hand }: ContrastStretch, line: Points, size: number): Plate & { text: string } {
  const text = written(ratio);
  const { width, height } = darkPlateSize(text, size);
  const along = cumulativeLength(line);
  const out = hand === 'left' ? 1 : -1;
  const places = SHARES.map((share): Place => {
    const { at, across } = acrossAt(line, along, share * along[along.length - 1]);
    const far = BAND / 2 + Math.abs((across[0] * width) / 2) + Math.abs((across[1] * height) / 2);
    return [at[0] + out * far * across[0], at[1] + out * far * across[1]];
  });
  return { text, width, height, places };
}

function headingOf(map: SeamMap, marks: number): string {
  if (map.patches.every((patch) => !fabricOfPatch(patch))) {
    return 'Contrast of thread and fabric: no patch has a fabric color, so there is none to tell';
  }
  return marks === 0
    ? 'Contrast of thread and fabric: no thread lies on a fabric whose color is known'
    : 'Contrast of thread and fabric, on each side of a seam for itself';
}

function entriesOf({ patches }: SeamMap, stretches: readonly ContrastStretch[]): LegendEntry[] {
  if (stretches.length === 0) return [];
  const sample = (verdict: Look) => (x: number, y: number) =>
    element('g', { fill: 'none' }, lookOf(verdict, Float64Array.of(x - 3.5, y, x + 3.5, y), INK));
  const unknown = patches.filter((patch) => !fabricOfPatch(patch)).map(({ id }) => id);
  return [
    { sample: sample('clear'), told: `thin line: clear, ${CLEAR} and more` },
    { sample: sample('visible'), told: `dashed: visible, ${SEEN} to ${CLEAR}` },
    { sample: sample('lost'), told: `hatched band: it melts into the fabric, below ${SEEN}` },
    {
      sample: (x, y) => darkPlate('1.3', [x, y], 2),
      told: `contrast, where below ${JUST_SEEN}; bands on both sides: the stitch is hardly to be seen`,
    },
    ...(stretches.some(({ line, lane }) => line !== null && lane > 0)
      ? [
          {
            sample: () => '',
            told: 'each thread of a seam has a mark of its own, the first next to the seam',
          },
        ]
      : []),
    ...(unknown.length
      ? [
          {
            sample: () => '',
            told: `no mark: the fabric color of ${unknown.length === 1 ? 'patch' : 'patches'} ${numberRanges(unknown)} is not known`,
          },
        ]
      : []),
  ];
}
