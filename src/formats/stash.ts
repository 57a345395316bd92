import { firstOf, InputError, InputErrors } from '../input-error.js';
import type { ThreadChoice } from './dressing.js';
import { WEIGHT_PATTERN } from './thread-weight.js';

/** No maker has more threads, and no dressing takes more. */
const MOST = 1000;
/** What a thread is when its weight is not said. */
const USUAL_WEIGHT = 'No. 40';

/** Columns by the words that head them. */
const COLUMNS: Readonly<Record<'name' | 'color' | 'code' | 'weight' | 'finish', readonly string[]>> = {
  name: ['name', 'thread'],
  color: ['color', 'colors', 'colour', 'colours', 'hex'],
  code: ['code', 'number', 'no', 'no.'],
  weight: ['weight'],
  finish: ['finish'],
};
type Column = keyof typeof COLUMNS;

/**
 * A maker's own threads from comma-separated values (RFC 4180; semicolons and tabs do too). The first line names the
 * columns: name and color, and as far as they are wanted code, weight and finish; others are left alone. A color is any of
 * CSS; a variegated thread has several in its cell, with spaces between them.
 *
 * @param where names the file in messages
 * @throws InputErrors with every line that cannot be used: columns missing, colors that cannot be read, threads there twice
 */
export async function readStash(text: string, where: string): Promise<readonly ThreadChoice[]> {
  const { default: papa } = await import('papaparse');
  const plain = text.replace(/^\uFEFF/, '');
  const { data, errors } = papa.parse<string[]>(plain, { delimiter: delimiterOf(plain) });
  const lines = lineNumbers(data);
  const isFilled = (cells: readonly string[]) => cells.some((cell) => cell.trim() !== '');
  const head = data.findIndex(isFilled);
  if (head < 0) throw new InputError('empty-stash', where, 'names no threads', FIRST_LINE);
  const columns = columnsOf(data[head], `${where} line ${lines[head]}`);
  const broken = errors.filter(({ type }) => type === 'Quotes');
  const rows = data.flatMap((cells, i) => (i > head && isFilled(cells) ? [{ cells, line: lines[i] }] : []));
  if (rows.length > MOST) {
    throw new InputError(
      'stash-too-large',
      where,
      `names ${rows.length} threads`,
      `it may name up to ${MOST}`,
    );
  }
  if (broken.length > 0) {
    throw new InputErrors(
      firstOf(broken, where, ({ row }) => {
        const place = `${where} line ${lines[row ?? 0] ?? lines.at(-1)}`;
        return new InputError(
          'bad-quotes',
          place,
          'has a quote that does not end',
          'close it, or double it inside quotes',
        );
      }),
    );
  }
  const { formatHex, parse } = await import('culori');
  const colorOf = (word: string): string | null => {
    const color = parse(word);
    return color && (color.alpha ?? 1) === 1 ? formatHex(color) : null;
  };
  const mistakes: InputError[] = [];
  const known = new Map<string, number>();
  const threads: ThreadChoice[] = [];
  for (const { cells, line } of rows) {
    const read = threadOf(cells, columns, colorOf, `${where} line ${line}`);
    mistakes.push(...read.mistakes);
    if (!read.thread) continue;
    const { name, weight } = read.thread;
    const before = known.get(keyOf(read.thread));
    if (before === undefined) known.set(keyOf(read.thread), line);
    else
      mistakes.push(
        new InputError(
          'thread-twice',
          `${where} line ${line}`,
          `"${name}" in ${weight} stands in line ${before} already`,
          'take one of them out, or tell them apart by name or weight',
        ),
      );
    threads.push(read.thread);
  }
  if (mistakes.length > 0) throw new InputErrors(firstOf(mistakes, where, (mistake) => mistake));
  if (threads.length === 0)
    throw new InputError('empty-stash', where, 'names no threads', 'add a line for each');
  return threads;
}

/** What stands most often in the first line that says anything. */
function delimiterOf(text: string): string {
  const head = /^.*\w.*$/m.exec(text)?.[0] ?? '';
  const count = (mark: string) => head.split(mark).length;
  return [',', ';', '\t'].reduce((most, mark) => (count(mark) > count(most) ? mark : most));
}

const FIRST_LINE = 'begin with a line such as name,color,code,weight,finish';

const keyOf = ({ name, weight }: ThreadChoice): string =>
  JSON.stringify([name.toLowerCase(), /\d+/.exec(weight)?.[0]]);

/** The line of the file that each row begins in: a cell in quotes may hold line breaks. */
function lineNumbers(rows: readonly (readonly string[])[]): number[] {
  let line = 1;
  return rows.map((cells) => {
    const begins = line;
    line += 1 + cells.reduce((sum, cell) => sum + (cell.match(/\r\n|\r|\n/g)?.length ?? 0), 0);
    return begins;
  });
}

function columnsOf(head: readonly string[], where: string): ReadonlyMap<Column, number> {
  const words = head.map((cell) => cell.trim().toLowerCase());
  const mistakes: InputError[] = [];
  const found = new Map<Column, number>();
  for (const column of Object.keys(COLUMNS) as Column[]) {
    const at = words.flatMap((word, i) => (COLUMNS[column].includes(word) ? [i] : []));
    if (at.length > 0) found.set(column, at[0]);
    if (at.length > 1) {
      const wrong = `columns ${at.map((i) => i + 1).join(' and ')} are both the ${column}`;
      mistakes.push(new InputError('column-twice', where, wrong, 'keep one of them'));
    }
    if (at.length === 0 && (column === 'name' || column === 'color')) {
      mistakes.push(new InputError('column-missing', where, `there is no column "${column}"`, FIRST_LINE));
    }
  }
  if (mistakes.length > 0) throw new InputErrors(mistakes);
  return found;
}

function threadOf(
  cells: readonly string[],
  columns: ReadonlyMap<Column, number>,
  colorOf: (word: string) => string | null,
  where: string,
): { readonly thread: ThreadChoice | null; readonly mistakes: readonly InputError[] } {
  const cell = (column: Column): string => cells[columns.get(column) ?? -1]?.trim() ?? '';
  const mistakes: InputError[] = [];
  const wrong = (code: string, what: string, right: string) =>
    void mistakes.push(new InputError(code, where, what, right));
  const [name, said, code, finish] = [cell('name'), cell('color'), cell('code'), cell('finish')];
  if (name === '') wrong('no-name', 'the thread has no name', 'name it');
  if (said === '') wrong('no-color', 'the thread has no color', 'give one such as #7a2f3b or darkred');
  const colors = wordsOf(said).map((word) => ({ word, hex: colorOf(word) }));
  for (const { word, hex } of colors) {
    if (hex === null) wrong('bad-color', `'${word}' is no color`, 'give one such as #7a2f3b or darkred');
  }
  const weight = cell('weight') || USUAL_WEIGHT;
  if (!new RegExp(WEIGHT_PATTERN).test(weight))
    wrong('bad-weight', `'${weight}' is no weight`, 'give one such as No. 40');
  if (mistakes.length > 0) return { thread: null, mistakes };
  const [hex, ...more] = colors.flatMap((color) => color.hex ?? []);
  const thread: ThreadChoice = {
    name,
    hex,
    weight: `No. ${/\d+/.exec(weight)![0]}`,
    ...(more.length > 0 && { moreHex: more }),
    ...(code && { code }),
    ...(finish && { finish }),
  };
  return { thread, mistakes };
}

/** The colors of a cell: words with spaces between them, but not inside brackets. */
const wordsOf = (cell: string): string[] =>
  cell
    .split(/\s+(?![^(]*\))/)
    .map((word) => word.replace(/^[/|+]$|[;,]$/g, ''))
    .filter((word) => word !== '');
