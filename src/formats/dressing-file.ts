import { InputError } from '../input-error.js';
import { DRESSING_VERSION, type Dressing } from './dressing.js';
import { notJson } from './json-place.js';

export { writeDressing } from './dressing-text.js';

/** No block has more seams, and no stitch file more color stops. */
const MOST = { treatments: 20_000, ornaments: 1_000, threads: 1_000 };
/** More than this many mistakes in one line help nobody. */
const MOST_TOLD = 30;

/**
 * The dressing in the text of a `.dressing.json` file. `where` names the file in messages.
 * @throws InputError when the text is no JSON (with line and column), is no dressing, is of a newer version, or has
 * mistakes in it: all of them are told, each with its place in the file
 */
export async function readDressing(text: string, where: string): Promise<Dressing> {
  const value = await parsed(text, where);
  const { format, version } = Object(value) as Record<string, unknown>;
  if (format !== 'seamwright-dressing') {
    throw new InputError(
      'not-a-dressing',
      where,
      'this JSON is no dressing',
      'one has "format": "seamwright-dressing"',
    );
  }
  if (typeof version === 'number' && version > DRESSING_VERSION) {
    throw new InputError(
      'newer-dressing',
      where,
      `the dressing is of version ${version}, from a newer program`,
      `this program reads version ${DRESSING_VERSION}; update it`,
    );
  }
  refuseEndless(value as Record<string, unknown>, where);
  const { mistakesIn } = await import('./dressing-mistakes.js');
  const mistakes = mistakesIn(value);
  if (mistakes.length) throw mistaken(mistakes, where);
  return value as Dressing;
}

/** Lists that go on and on are refused before anything looks into them. */
function refuseEndless(value: Record<string, unknown>, where: string): void {
  for (const [key, most] of Object.entries(MOST)) {
    const list = value[key];
    if (!Array.isArray(list) || list.length <= most) continue;
    throw new InputError(
      `too-many-${key}`,
      where,
      `it has ${list.length} ${key}`,
      `it may have up to ${most}`,
    );
  }
}

async function parsed(text: string, where: string): Promise<unknown> {
  const plain = text.replace(/^\uFEFF/, '');
  try {
    return JSON.parse(plain);
  } catch {
    throw await notJson(plain, where, 'a dressing is a JSON file');
  }
}

/** The same mistake at many places of a list is told once. */
function mistaken(mistakes: readonly string[], where: string): InputError {
  const kinds = new Map<string, { first: string; count: number }>();
  for (const first of mistakes) {
    const kind = first.replace(/\[\d+\]/g, '[]');
    const known = kinds.get(kind);
    if (known) known.count++;
    else kinds.set(kind, { first, count: 1 });
  }
  const told = [...kinds.values()]
    .slice(0, MOST_TOLD)
    .map(({ first, count }) => (count === 1 ? first : `${first} (and ${count - 1} more like it)`));
  const more = kinds.size - told.length;
  const right = mistakes.length === 1 ? 'correct it' : `correct these ${mistakes.length} places`;
  return new InputError(
    'dressing-mistakes',
    where,
    told.join(', ') + (more ? `, and ${more} more` : ''),
    right,
  );
}
