interface Choosing {
  readonly title: string;
  readonly value: string;
  /** value and how it is told */
  readonly options: readonly (readonly [string, string])[];
  /** which of them can be chosen; all where it is not said */
  readonly isOpen?: (value: string) => boolean;
  readonly onChoose: (value: string) => void;
}

/** Longer than this is cut where it stands beside its title in a narrow panel, letters. */
const LONG = 24;

/** One of a few. */
export function Choice({ title, value, options, isOpen = () => true, onChoose }: Choosing) {
  const isLong = options.some(([, told]) => told.length > LONG);
  return (
    <label class={isLong ? 'choice long' : 'choice'}>
      <span>{title}</span>
      <select
        aria-label={title}
        value={value}
        onChange={({ currentTarget }) => onChoose(currentTarget.value)}
      >
        {options.map(([key, told]) => (
          <option key={key} value={key} disabled={key !== value && !isOpen(key)}>
            {told}
          </option>
        ))}
      </select>
    </label>
  );
}
