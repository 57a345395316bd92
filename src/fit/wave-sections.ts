import type { Corner, GuideLine } from '../geometry/guide-line.js';
import { wrapAngle } from '../geometry/point.js';
import type { Reach } from './band.js';
import type { SpanQuestion } from './fit-span.js';
import type { Laying, Part } from './lay.js';
import { cornerMitre, withMetMitres } from './mitre.js';
import type { UnitRun } from './unit-places.js';
import type { Counted, WaveChoice } from './wave-choice.js';
import { flanks } from './wave-counts.js';
import type { WaveGuide } from './wave-guide.js';
import { alongOneWave, type Waves } from './waves.js';

/** Repeats on the waves, and how they are laid. */
export function layingOn(
  on: Laying,
  line: WaveGuide,
  { span, rows }: SpanQuestion,
  { scale, counted, waves }: WaveChoice,
): { laying: Laying; runs: UnitRun[] } {
  const { guide, crests, band, reach } = line;
  const { sized } = rows;
  const unitsPer = sized.glide ? 1 : 0.5;
  const sections = sectionsOf(line, counted, waves);
  const runs = sections.map(({ from, to, halfRepeats }): UnitRun => {
    const count = halfRepeats * unitsPer;
    const unit = sized.build(scale, (2 * (to - from)) / halfRepeats);
    return { unit, count, from, length: (to - from) / count };
  });
  const laying: Laying = {
    guide,
    parts: partsBetween(guide, sections, reach, span.ring),
    band,
    built: reach,
    closed: span.ring,
    offset: 0,
    on,
    crests,
  };
  return { laying, runs };
}

interface Section {
  readonly from: number;
  readonly to: number;
  readonly halfRepeats: number;
}

/** Stretches of the waves that hold whole half-repeats: between sharp places, or along all of a smooth line's waves. */
function sectionsOf({ guide }: WaveGuide, counted: readonly Counted[], waves: Waves): Section[] {
  const perStretch = counted.map(({ waves: count, halfRepeats, share }) => ({
    sections: guide.corners.length > 0 ? count * flanks(waves, share) : 1,
    halfRepeats:
      guide.corners.length > 0 ? halfRepeats : (count / share) * flanks(waves, share) * halfRepeats,
  }));
  if (guide.corners.length > 0) {
    const bounds = [0, ...guide.corners.map(({ u }) => u), guide.length];
    const halves = perStretch.flatMap(({ sections, halfRepeats }) =>
      new Array<number>(sections).fill(halfRepeats),
    );
    return halves.map((halfRepeats, i) => ({ from: bounds[i], to: bounds[i + 1], halfRepeats }));
  }
  const own = counted.map(({ from, to, waves: count }) => count * alongOneWave(waves, (to - from) / count));
  const all = own.reduce((a, b) => a + b, 0);
  let from = 0;
  return own.map((length, i) => {
    const to = i === own.length - 1 ? guide.length : from + (guide.length * length) / all;
    const section = { from, to, halfRepeats: perStretch[i].halfRepeats };
    from = to;
    return section;
  });
}

/** One part between two sharp places; on a ring the last and the first meet in one. */
function partsBetween(guide: GuideLine, sections: readonly Section[], reach: Reach, ring: boolean): Part[] {
  const { u: us, theta, corners } = guide;
  const plain = { startPoint: null, endPoint: null };
  if (corners.length === 0) {
    return [{ from: 0, to: guide.length, first: 0, last: us.length - 1, start: null, end: null, ...plain }];
  }
  const doubled: number[] = [];
  for (let k = 0; k + 1 < us.length; k++) if (us[k] === us[k + 1]) doubled.push(k);
  const closing: Corner | undefined = ring
    ? { u: 0, turn: -wrapAngle(theta[0] - theta[us.length - 1]) }
    : undefined;
  const parts = sections.map(({ from, to, halfRepeats }, i): Part => {
    const before = i > 0 ? corners[i - 1] : closing;
    const after = i < corners.length ? corners[i] : closing;
    const length = to - from;
    const mitre = (corner: Corner | undefined) =>
      corner ? cornerMitre(corner.turn, reach, (2 * length) / halfRepeats, length) : null;
    return {
      from,
      to,
      first: i > 0 ? doubled[i - 1] + 1 : 0,
      last: i < corners.length ? doubled[i] : us.length - 1,
      start: mitre(before),
      end: mitre(after),
      ...plain,
    };
  });
  return withMetMitres(parts, ring);
}
