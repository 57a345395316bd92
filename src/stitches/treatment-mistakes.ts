import type { Dictionary } from './dictionary.js';
import { nearestName } from './nearest-name.js';
import type { Figure } from './stitch.js';

type Part = Record<string, unknown>;

/**
 * What a saved treatment names that the dictionary does not have, or not so: a line each; empty when it can be worked.
 * @param treatment may have mistakes of form, which are told elsewhere: what cannot be read is passed over
 * @param onGuide seats that a row has where it is stitched on a guide line
 */
export function treatmentMistakes(
  treatment: object,
  { stitches, ornaments }: Dictionary,
  where: string,
  onGuide: readonly string[],
): string[] {
  const mistakes: string[] = [];
  const add = (place: string, wrong: string, right: string) =>
    mistakes.push(`${where} ${place}: ${wrong}; ${right}`);
  const named = <F extends Figure>(
    shelf: ReadonlyMap<string, F>,
    kind: string,
    name: unknown,
    place: string,
  ): F | undefined => {
    if (typeof name !== 'string') return undefined;
    const found = shelf.get(name);
    const nearest = () => `did you mean "${nearestName(name, [...shelf.keys()])}"?`;
    if (!found) add(place, `there is no ${kind} "${name}"`, nearest());
    return found;
  };
  const values = (figure: Figure, given: Part, place: string) => {
    const names = figure.parameters.map((one) => one.name);
    for (const [name, value] of Object.entries(given)) {
      if (typeof value !== 'number') continue;
      const parameter = figure.parameters.find((one) => one.name === name);
      if (!parameter) {
        add(
          place,
          `${figure.name} has no parameter "${name}"`,
          `did you mean "${nearestName(name, names)}"?`,
        );
      } else if (!(value >= parameter.min && value <= parameter.max)) {
        add(place, `${name} ${value} is out of range`, `${parameter.min} to ${parameter.max}`);
      }
    }
  };

  const { rows, accents, guide } = treatment as Part;
  const worked = listed(rows).map((row, r) => {
    const { stitch, parameters } = objectOf(row);
    const figure = named(stitches, 'stitch', stitch, `rows[${r}]`);
    if (figure) values(figure, objectOf(parameters), `rows[${r}]`);
    return figure;
  });
  listed(accents).forEach((accent, k) => {
    const place = `accents[${k}]`;
    const { row, seat, ornament, parameters, graded } = objectOf(accent);
    const on = worked[Number(row)];
    if (on && typeof seat === 'string') {
      const own = on.build({}).seats.map(({ name }) => name);
      const seats = [...new Set([...own, ...(guide ? onGuide : [])])];
      const right = seats.length ? `its seats are ${seats.join(', ')}` : 'it has none';
      if (!seats.includes(seat)) add(place, `${on.name} has no seat "${seat}"`, right);
    }
    const figure = named(ornaments, 'ornament', ornament, place);
    if (!figure) return;
    const grades = listed(graded);
    for (const grade of grades.length ? grades : [{}]) {
      values(figure, { ...objectOf(parameters), ...objectOf(grade) }, place);
    }
  });
  return [...new Set(mistakes)];
}

const listed = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);
const objectOf = (value: unknown): Part =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Part) : {};
