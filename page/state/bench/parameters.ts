import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { RESERVED } from './names.js';

type Parameter = StitchRecord['parameters'][string];

/** The stitch with something of a parameter changed. */
export const parameterChanged = (
  record: StitchRecord,
  name: string,
  change: Partial<Parameter>,
): StitchRecord => ({
  ...record,
  parameters: { ...record.parameters, [name]: { ...record.parameters[name], ...change } },
});

/** The stitch with a parameter more: a share, to be used in what is written of points. */
export function parameterAdded(record: StitchRecord, title: string): StitchRecord {
  const [first, ...others] = title
    .normalize('NFD')
    .replace(/[^A-Za-z0-9 ]/g, '')
    .trim()
    .split(/ +/);
  const plain = `${first.toLowerCase()}${others.map((word) => word[0].toUpperCase() + word.slice(1)).join('')}`;
  const wanted = (/^[a-z]/.test(plain) ? plain : `p${plain}`).slice(0, 28);
  const taken = new Set([
    ...Object.keys(record.parameters),
    ...Object.keys(record.measures ?? {}),
    ...RESERVED,
  ]);
  let name = wanted;
  for (let k = 2; taken.has(name); k++) name = `${wanted}${k}`;
  const parameter: Parameter = { title, unit: 'share', default: 0.5, min: 0, max: 1 };
  return { ...record, parameters: { ...record.parameters, [name]: parameter } };
}

export function parameterRemoved(record: StitchRecord, name: string): StitchRecord {
  const { [name]: _, ...parameters } = record.parameters;
  return { ...record, parameters };
}

/** Those that every stitch has. */
export const isNeeded = (name: string): boolean => name === 'repeat' || name === 'width';
