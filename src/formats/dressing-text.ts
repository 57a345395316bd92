import type { Dressing, Row, Treatment } from './dressing.js';

/** Short values stay on one line up to this width. */
const LINE = 120;

/**
 * The text of a `.dressing.json` file: keys in a fixed order, so that equal dressings give equal text, and laid out to be
 * read and edited by people.
 */
export function writeDressing(dressing: Dressing): string {
  const { format, version, block, ends, outline, gap, treatments, threads, hoop, after, seed } = dressing;
  const inOrder = {
    format,
    version,
    block: {
      file: block.file,
      stops: block.stops,
      snap: block.snap,
      through: block.through.map(({ at, seam }) => ({ at, seam })),
    },
    ends,
    outline,
    gap,
    hoop: hoop && { width: hoop.width, height: hoop.height },
    after,
    seed,
    threads: threads.map(({ name, hex, weight }) => ({ name, hex, weight })),
    treatments: treatments.map(treatmentInOrder),
  };
  return `${laidOut(inOrder, '')}\n`;
}

const treatmentInOrder = ({ seam, rows, ends, side, reverse }: Treatment) => ({
  seam: { id: seam.id, middle: seam.middle, ends: seam.ends },
  rows: rows.map(rowInOrder),
  ends,
  side,
  reverse,
});

const rowInOrder = ({ stitch, parameters, thread, passes, offset }: Row) => ({
  stitch,
  parameters: Object.fromEntries(Object.entries(parameters).sort(([a], [b]) => (a < b ? -1 : 1))),
  thread,
  passes,
  offset,
});

/** JSON with lists and objects on one line where they fit. */
function laidOut(value: unknown, indent: string): string {
  const flat = onOneLine(value);
  if (indent.length + flat.length <= LINE && indent) return flat;
  const deeper = `${indent}  `;
  if (Array.isArray(value) && value.length) {
    return `[\n${value.map((item) => deeper + laidOut(item, deeper)).join(',\n')}\n${indent}]`;
  }
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
    const lines = Object.entries(value).map(
      ([key, item]) => `${deeper}${JSON.stringify(key)}: ${laidOut(item, deeper)}`,
    );
    return `{\n${lines.join(',\n')}\n${indent}}`;
  }
  return flat;
}

function onOneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).map(([key, item]) => `${JSON.stringify(key)}: ${onOneLine(item)}`);
    return entries.length ? `{ ${entries.join(', ')} }` : '{}';
  }
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new RangeError(`a dressing cannot hold ${value}`);
  return JSON.stringify(value);
}
