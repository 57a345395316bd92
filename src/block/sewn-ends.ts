import { distance, type Point } from '../geometry/point.js';
import { SNAP } from '../geometry/tolerances.js';
import {
  type End,
  fromEnd,
  type Lines,
  type LooseLine,
  linesOf,
  looseEnds,
  seat,
} from './sewn-loose-lines.js';
import { KnownMeetings, keyOf, type Meeting } from './sewn-meetings.js';
import { lengthenShortEnds } from './sewn-short-ends.js';

/**
 * Brings the ends of sewn lines onto the lines they are meant for. What runs over another line by less than the
 * allowance is cut there; what falls short of one by no more than its reach is made longer.
 *
 * Two lines that run over each other's ends cross there too, so cuts begin where there is no doubt: on a line that goes
 * on for more than the allowance to both sides. Each cut end takes its own overrun out of the play. A crossing that both
 * lines pass by more than the allowance is a crossing and stays.
 */
export function settleEnds(loose: readonly LooseLine[], allowance: number): Point[][] {
  const lines = linesOf(loose);
  const meetings = new KnownMeetings(lines, allowance);
  for (;;) {
    // each round seats at least one end
    let cuts = firmOverruns(lines, meetings, allowance);
    if (!cuts.length) cuts = mutualOverruns(lines, meetings);
    if (!cuts.length) break;
    for (const { end, meeting } of cuts) {
      cut(lines, end, meeting);
      meetings.forget(end);
    }
  }
  lengthenShortEnds(lines);
  return lines.list.map(({ points }) => [...points]);
}

/** An end, and the line on which it is to be cut. */
interface Cut {
  readonly end: End;
  readonly meeting: Meeting;
}

function firmOverruns(lines: Lines, meetings: KnownMeetings, allowance: number): Cut[] {
  return looseEnds(lines).flatMap((end) => {
    const firm = meetings.of(end).filter((m) => m.toOtherEnd >= allowance);
    return firm.length ? [{ end, meeting: innermost(firm) }] : [];
  });
}

/** Two overruns across each other make a corner of both lines; failing that, the least doubtful cut is made. */
function mutualOverruns(lines: Lines, meetings: KnownMeetings): Cut[] {
  const found = looseEnds(lines).flatMap((end): Cut[] => {
    const near = meetings.of(end);
    return near.length ? [{ end, meeting: innermost(near) }] : [];
  });
  if (!found.length) return [];
  const byEnd = new Map(found.map((one) => [keyOf(one.end), one]));
  for (const a of found) {
    const b = byEnd.get(keyOf([a.meeting.other, a.meeting.otherEnd]));
    if (!b || b.meeting.other !== a.end[0] || distance(a.meeting.at, b.meeting.at) > SNAP) continue;
    return [a, { end: b.end, meeting: { ...b.meeting, at: a.meeting.at } }];
  }
  return [found.reduce((a, b) => (b.meeting.toOtherEnd > a.meeting.toOtherEnd ? b : a))];
}

const innermost = (meetings: readonly Meeting[]): Meeting =>
  meetings.reduce((a, b) => (b.fromEnd > a.fromEnd ? b : a));

function cut(lines: Lines, [self, end]: End, { at, fromEnd: over }: Meeting): void {
  const line = lines.list[self];
  const tail = fromEnd(line, end);
  let walked = 0;
  let first = 1;
  while (first < tail.length - 1 && walked + distance(tail[first - 1], tail[first]) <= over) {
    walked += distance(tail[first - 1], tail[first]);
    first++;
  }
  seat(line, end, [at, ...tail.slice(first)]);
}
