interface Asked {
  /** what it looks for, for who does not see it */
  readonly title: string;
  readonly hint: string;
  readonly wanted: string;
  readonly onChange: (wanted: string) => void;
}

/** A field to look for something by its name. */
export function Search({ title, hint, wanted, onChange }: Asked) {
  return (
    <label class="search">
      <span class="unseen">{title}</span>
      <input
        type="search"
        placeholder={hint}
        value={wanted}
        onInput={({ currentTarget }) => onChange(currentTarget.value)}
      />
    </label>
  );
}
