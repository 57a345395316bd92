import { type Finding, lineName } from '../finding.js';
import { shifted } from './band.js';
import {
  cutsOf,
  endsOf,
  fitSpan,
  gapsOf,
  partsOf,
  type SpanFit,
  type SpanQuestion,
  sizeFindings,
} from './fit-span.js';
import type { Laying } from './lay.js';
import { layRows } from './lay-rows.js';
import { wholeReach } from './rows.js';
import { chooseWaves, waveHand } from './wave-choice.js';
import { flanks } from './wave-counts.js';
import { type WaveGuide, waveGuide } from './wave-guide.js';
import { layingOn } from './wave-sections.js';
import { alongOneWave } from './waves.js';

/**
 * Whole waves on every stretch of a span, whole repeats on every wave (or whole waves in every repeat), laid along the
 * line as if they were a seam themselves: their own bends and sharp places limit what is worked on them. Where that
 * cannot be, the span is worked plainly, and a finding says why.
 */
export function fitOnWaves(question: SpanQuestion, gap: number): SpanFit {
  const choice = chooseWaves(question, gap);
  if (!choice) {
    const plain = fitSpan({ ...question, rows: { ...question.rows, waves: undefined } });
    return plain.laid ? { ...plain, findings: [...plain.findings, withoutWaves(question)] } : plain;
  }
  const { guide, span, rows } = question;
  const { scale, counted, line } = choice;
  const repeats = counted.map(
    ({ waves, halfRepeats, share }) => (waves / share) * flanks(choice.waves, share) * (halfRepeats / 2),
  );
  const whole = shifted(wholeReach(rows, scale, rows.sized.repeat * scale), question.offset);
  const on: Laying = {
    guide,
    parts: partsOf(
      question,
      counted,
      counted.map(({ from, to }) => to - from),
      counted.map(({ waves }) => 2 * waves),
      whole,
    ),
    band: question.band,
    built: whole,
    closed: span.ring,
    offset: question.offset,
  };
  const laid = (own: WaveGuide) => layingOn(on, own, question, choice);
  const first = laid(line);
  const isInterlaced = rows.followers.some(({ mirrored }) => mirrored);
  const mirrored = isInterlaced
    ? laid(waveGuide(choice.waves, counted, rows, scale, -waveHand(question) as 1 | -1, gap)).laying
    : first.laying;
  return {
    laid: layRows(rows, first.laying, first.runs, scale, span.ring, cutsOf(question), mirrored),
    stretches: counted.map(({ from, to, waves }, i) => ({
      from,
      to,
      repeats: repeats[i],
      ends: endsOf(span, i, counted.length),
      waves: {
        count: waves,
        along: waves * alongOneWave(choice.waves, (to - from) / waves),
      },
    })),
    gaps: gapsOf(question, 0),
    scale,
    findings: sizeFindings(question, { scale, margin: 0 }),
  };
}

function withoutWaves({ seam, rows, span, middle }: SpanQuestion): Finding {
  const { shape, height, length } = rows.waves!;
  return {
    level: 'warning',
    code: 'without-waves',
    message:
      `${lineName(seam)}: ${rows.sized.stitch.title.toLowerCase()} is worked without ${shape === 'points' ? shape : `a ${shape}`}, ` +
      `since it cannot follow one of ${height} by ${length} mm here; longer or lower ones, or a narrower stitch, would do`,
    seam,
    at: middle(span),
  };
}
