interface Ticking {
  readonly title: string;
  readonly about?: string;
  readonly value: boolean;
  /** whether it can be changed; so it is where it is not said */
  readonly isOpen?: boolean;
  readonly onChange: (value: boolean) => void;
}

/** Something that is so or is not. */
export function Tick({ title, about, value, isOpen = true, onChange }: Ticking) {
  return (
    <label class="check" title={about}>
      <input
        type="checkbox"
        checked={value}
        disabled={!isOpen}
        onChange={({ currentTarget }) => onChange(currentTarget.checked)}
      />
      {title}
    </label>
  );
}
