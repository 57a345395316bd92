import type { AccentAsk } from '../fit/accents.js';
import type { Sized } from '../fit/sized.js';
import { sizedOrnament } from '../fit/sized-ornament.js';
import type { Accent } from '../formats/dressing.js';
import { InputError } from '../input-error.js';
import type { Dictionary } from '../stitches/dictionary.js';
import { ornamentNamed } from './ornament-named.js';

/** Extent of what is put on by hand when the dressing does not say, mm: a common bead or small button. Common practice. */
const BY_HAND_SIZE = 3;

/**
 * What an accent of a treatment asks.
 * @param rows the stitches of its rows at their sizes
 * @param further seats that the treatment has besides those of its stitches
 * @param passes how often its visible legs are sewn
 * @param larger by how much its thread makes the smallest good size larger than in No. 40
 * @throws InputError when the row has no such seat, or the dictionary no such ornament
 */
export function accentAsk(
  dictionary: Dictionary,
  accent: Accent,
  rows: readonly Sized[],
  further: readonly string[],
  passes: number,
  larger: number,
): AccentAsk {
  const { stitch, repeat, build } = rows[accent.row];
  const seats = [...build(1, repeat).seats.map(({ name }) => name), ...further];
  if (!seats.includes(accent.seat)) {
    throw new InputError(
      'unknown-seat',
      '',
      `${stitch.title.toLowerCase()} has no seat "${accent.seat}"`,
      seats.length ? `its seats are ${[...new Set(seats)].join(', ')}` : 'it has none',
    );
  }
  const grades = accent.graded ?? [{}];
  const ornament = accent.ornament === null ? null : ornamentNamed(dictionary, accent.ornament);
  return {
    row: accent.row,
    seat: accent.seat,
    figures: grades.map((grade) =>
      ornament
        ? sizedOrnament(ornament, { ...accent.parameters, ...grade }, larger)
        : roundThing(grade.size ?? accent.parameters.size ?? BY_HAND_SIZE),
    ),
    threads: ornament?.threads ?? [],
    byHand: accent.byHand ?? null,
    passes,
    every: accent.every ?? 1,
    from: accent.from ?? 0,
    turn: ((accent.turn ?? 0) * Math.PI) / 180,
    away: accent.away ?? 0,
  };
}

/** The room that a bead or button takes: a circle with nothing sewn. */
function roundThing(size: number): AccentAsk['figures'][number] {
  return {
    build: (scale) => {
      const radius = (size * scale) / 2;
      const path = Float64Array.from(
        Array.from({ length: 13 }, (_, i) => [
          radius * Math.cos((i * Math.PI) / 6),
          radius * Math.sin((i * Math.PI) / 6),
        ]).flat(),
      );
      const around = { name: 'edge', kind: 'curve', from: 0, to: 0, path, share: 0, bends: false } as const;
      return {
        length: 0,
        nodes: path.slice(0, 2),
        joins: [],
        legs: [{ ...around, anchor: 0, class: 0, size: 0, thread: 0 }],
        closing: [],
        ending: [],
        seats: [],
        reach: { left: radius, right: radius },
        overhang: { start: radius, end: radius },
      };
    },
  };
}
