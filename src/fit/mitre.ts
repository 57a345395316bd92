import type { Reach } from './band.js';
import type { Mitre, Part } from './lay.js';
import type { SpanEnd } from './spans.js';

/** Repeats lean or mitre over as much line as keeps 1 - slope v / length at 0.4 or more. */
const FOLD_SHARE = 0.6;
/** The outer point of a mitred corner lies at most this many reaches from the corner. */
export const LONGEST_MITRE = 1.5;

/**
 * A corner of turn tau (left positive): both sides meet on its bisector. The repeat beside it gives way; where the inner
 * reach needs more than that, as many repeats as it takes, up to half the side; and where that is not enough the inner
 * reach is less all along the side.
 */
export function cornerMitre(turn: number, reach: Reach, repeat: number, length: number): Mitre {
  const slope = Math.tan(turn / 2);
  const inner = (turn > 0 ? reach.left : reach.right) * Math.abs(slope);
  const over = Math.min(length / 2, Math.max(repeat, inner / FOLD_SHARE));
  // On the bisector, too, an inner arm is no longer than the others.
  const narrow = Math.min(Math.cos(turn / 2), inner > 0 ? (FOLD_SHARE * over) / inner : 1);
  const away = inner > 0 ? Math.min(1, (FOLD_SHARE * over) / inner) : 1;
  const cap = Math.min(1, LONGEST_MITRE * Math.cos(turn / 2));
  return turn > 0
    ? { slope, length: over, left: narrow, right: cap, leftAway: away, rightAway: 1 }
    : { slope, length: over, left: cap, right: narrow, leftAway: 1, rightAway: away };
}

/**
 * Parts in a row, whose mitres meet at every corner between them, on a ring at its start, too: each side asks for its own,
 * and where both differ in length the thread would jump from one to the other.
 */
export function withMetMitres(parts: readonly Part[], ring: boolean): Part[] {
  const met = [...parts];
  for (let i = ring ? 0 : 1; i < met.length; i++) {
    const k = (i + met.length - 1) % met.length;
    const [end, start] = [met[k].end, met[i].start];
    if (!end || !start) continue;
    const shared = { left: Math.min(end.left, start.left), right: Math.min(end.right, start.right) };
    met[k] = { ...met[k], end: { ...end, ...shared } };
    met[i] = { ...met[i], start: { ...start, ...shared } };
  }
  return met;
}

/** The last repeat leans to the line it ends on, as far as it can without folding. */
export function leanMitre(end: SpanEnd, reach: Reach, repeat: number, length: number): Mitre | null {
  if (end.slope === 0) return null;
  const widest = Math.max(reach.left, reach.right);
  const wanted = Math.abs(end.slope);
  const over = Math.min(length / 2, Math.max(repeat, (widest * wanted) / FOLD_SHARE));
  const slope = Math.min(wanted, (FOLD_SHARE * over) / widest);
  return { slope: Math.sign(end.slope) * slope, length: over, left: 1, right: 1, leftAway: 1, rightAway: 1 };
}
