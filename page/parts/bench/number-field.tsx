interface Field {
  readonly title: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
}

/** A number that is typed. */
export function NumberField({ title, value, onChange }: Field) {
  return (
    <label class="number">
      <span>{title}</span>
      <input
        type="number"
        step="any"
        value={value}
        onChange={({ currentTarget }) => {
          const typed = currentTarget.valueAsNumber;
          if (Number.isFinite(typed)) onChange(typed);
          else currentTarget.value = String(value);
        }}
      />
    </label>
  );
}
