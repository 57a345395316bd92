interface Choosing {
  readonly title: string;
  readonly value: string;
  /** value and how it is told */
  readonly options: readonly (readonly [string, string])[];
  readonly onChoose: (value: string) => void;
}

/** One of a few. */
export function Choice({ title, value, options, onChoose }: Choosing) {
  return (
    <label class="choice">
      <span>{title}</span>
      <select value={value} onChange={({ currentTarget }) => onChoose(currentTarget.value)}>
        {options.map(([key, told]) => (
          <option key={key} value={key}>
            {told}
          </option>
        ))}
      </select>
    </label>
  );
}
