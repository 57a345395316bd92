import { useState } from 'preact/hooks';

interface Asked {
  /** for those who do not see it */
  readonly title: string;
  readonly hint: string;
  readonly action?: string;
  readonly onAdd: (name: string) => void;
}

/** A name to be typed, and a button that makes what it names. */
export function NewName({ title, hint, action = 'Add', onAdd }: Asked) {
  const [wanted, setWanted] = useState('');
  return (
    <form
      class="row"
      onSubmit={(event) => {
        event.preventDefault();
        if (wanted.trim()) onAdd(wanted.trim());
        setWanted('');
      }}
    >
      <input
        type="text"
        aria-label={title}
        placeholder={hint}
        maxLength={40}
        value={wanted}
        onInput={({ currentTarget }) => setWanted(currentTarget.value)}
      />
      <button type="submit">
        {action}
        <span class="unseen"> {title}</span>
      </button>
    </form>
  );
}
