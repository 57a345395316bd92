import { useTyped } from '../typed.js';

interface Field {
  readonly title: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
}

/** A number that is typed. */
export function NumberField({ title, value, onChange }: Field) {
  const typing = useTyped(String(value), (text) => {
    if (text !== '' && Number.isFinite(Number(text))) onChange(Number(text));
  });
  return (
    <label class="number">
      <span>{title}</span>
      <input type="number" step="any" {...typing} />
    </label>
  );
}
