import { reservedNames } from './expression.js';
import type { Mistake } from './mistake.js';
import type { FigureRecord } from './stitch-record.js';

/** What is wrong with the parameters of a file: sizes it has to have, ranges, and the smallest good size. */
export function parameterMistakes(record: FigureRecord, sizes: readonly string[]): Mistake[] {
  const mistakes: Mistake[] = [];
  const { parameters } = record;
  const smallest = (record as FigureRecord & { smallest: Readonly<Record<string, number>> }).smallest;
  for (const key of sizes) {
    const place = `parameters.${key}`;
    if (!Object.hasOwn(parameters, key)) {
      const right = 'every file of this kind has one';
      mistakes.push({ place, wrong: 'it is missing', right, by: ['parameters'] });
    } else if (parameters[key].unit !== 'mm' || parameters[key].min <= 0) {
      const right = '"unit": "mm" and a "min" above 0';
      mistakes.push({ place, wrong: 'it is no length above 0', right, by: [place] });
    } else if (smallest[key] > parameters[key].default) {
      mistakes.push({
        place: `smallest.${key}`,
        wrong: `${smallest[key]} is more than the default`,
        right: `at most ${parameters[key].default}`,
        by: [place],
      });
    }
  }
  for (const [key, { min, max, default: usual }] of Object.entries(parameters)) {
    if (min <= usual && usual <= max) continue;
    mistakes.push({
      place: `parameters.${key}`,
      wrong: `default ${usual} is not between min ${min} and max ${max}`,
      right: 'min, default and max in rising order',
    });
  }
  return mistakes;
}

/** Names of parameters, measures and legs that are taken. */
export function nameMistakes({ parameters, measures, legs }: FigureRecord): Mistake[] {
  const mistakes: Mistake[] = [];
  const taken = new Set(reservedNames);
  for (const [kind, names] of Object.entries({ parameters, measures: measures ?? {} })) {
    for (const name of Object.keys(names)) {
      if (taken.has(name)) {
        mistakes.push({ place: `${kind}.${name}`, wrong: 'the name is taken', right: 'a name of its own' });
      }
      taken.add(name);
    }
  }
  const seen = new Set<string>();
  legs.forEach((entry, i) => {
    for (const { name } of 'legs' in entry ? entry.legs : [entry]) {
      if (seen.has(name)) {
        const place = `legs[${i}]`;
        mistakes.push({ place, wrong: `another leg is named "${name}"`, right: 'a name of its own' });
      }
      seen.add(name);
    }
  });
  return mistakes;
}
