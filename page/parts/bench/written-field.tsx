import { useTyped } from '../typed.js';

interface Field {
  readonly title: string;
  readonly value: string;
  /** what may be typed, by the id of its list */
  readonly list?: string;
  /** beside it: what it comes to */
  readonly note?: string;
  /** what it is said of, where that is not seen */
  readonly of?: string;
  /** its title is told, and not shown */
  readonly isBare?: boolean;
  readonly onChange: (text: string) => void;
}

/** Something that is typed: a name, arithmetic, points. What is refused is as it was. */
export function WrittenField({ title, value, list, note, of, isBare = false, onChange }: Field) {
  return (
    <label class={isBare ? 'written bare' : 'written'}>
      <span class={isBare ? 'unseen' : ''}>
        {title}
        {of && <span class="unseen"> of {of}</span>}
      </span>
      <input type="text" maxLength={300} spellcheck={false} list={list} {...useTyped(value, onChange)} />
      {note !== undefined && <output aria-hidden="true">{note}</output>}
    </label>
  );
}

/** Lines that are typed, one below the other. */
export function LinesField({
  title,
  lines,
  onChange,
}: {
  title: string;
  lines: readonly string[];
  onChange: (lines: string[]) => void;
}) {
  const typing = useTyped(lines.join('\n'), (text) =>
    onChange(text.split('\n').flatMap((line) => line.trim() || [])),
  );
  return (
    <label class="written">
      <span>{title}</span>
      <textarea rows={Math.min(6, lines.length + 1)} {...typing} />
    </label>
  );
}
