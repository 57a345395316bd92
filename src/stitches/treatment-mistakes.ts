import type { SavedTreatment } from '../formats/treatment.js';
import type { Dictionary } from './dictionary.js';
import { nearestName } from './nearest-name.js';
import type { Figure } from './stitch.js';

/** What a saved treatment names that the dictionary does not have, or not so: a line each; empty when it can be worked. */
export function treatmentMistakes(
  { rows, accents = [] }: SavedTreatment,
  { stitches, ornaments }: Dictionary,
  where: string,
): string[] {
  const mistakes: string[] = [];
  const values = (figure: Figure, given: Readonly<Record<string, number>>, place: string) => {
    for (const [name, value] of Object.entries(given)) {
      const parameter = figure.parameters.find((one) => one.name === name);
      if (!parameter) {
        const names = figure.parameters.map((one) => one.name);
        mistakes.push(
          `${where} ${place}: ${figure.name} has no parameter "${name}"; did you mean "${nearestName(name, names)}"?`,
        );
      } else if (!(value >= parameter.min && value <= parameter.max)) {
        mistakes.push(
          `${where} ${place}: ${name} ${value} is out of range; ${parameter.min} to ${parameter.max}`,
        );
      }
    }
  };
  const missing = (kind: string, name: string, names: Iterable<string>, place: string) =>
    mistakes.push(
      `${where} ${place}: there is no ${kind} "${name}"; did you mean "${nearestName(name, [...names])}"?`,
    );
  rows.forEach((row, r) => {
    const stitch = stitches.get(row.stitch);
    if (stitch) values(stitch, row.parameters, `rows[${r}]`);
    else missing('stitch', row.stitch, stitches.keys(), `rows[${r}]`);
  });
  accents.forEach((accent, k) => {
    const place = `accents[${k}]`;
    const on = stitches.get(rows[accent.row].stitch);
    const seats = on ? [...new Set(on.build({}).seats.map(({ name }) => name))] : [];
    if (on && !seats.includes(accent.seat)) {
      mistakes.push(
        `${where} ${place}: ${on.name} has no seat "${accent.seat}"; its seats are ${seats.join(', ')}`,
      );
    }
    if (accent.ornament === null) return;
    const ornament = ornaments.get(accent.ornament);
    if (!ornament) missing('ornament', accent.ornament, ornaments.keys(), place);
    else
      for (const grade of accent.graded ?? [{}]) values(ornament, { ...accent.parameters, ...grade }, place);
  });
  return mistakes;
}
