import { whileTelling } from '../../state/actions.js';

interface Asked {
  readonly title: string;
  /** what the maker is told meanwhile */
  readonly doing: string;
  readonly onPhoto: (file: File) => Promise<void>;
}

/** Lets the maker choose a photo. */
export function PhotoButton({ title, doing, onPhoto }: Asked) {
  return (
    <label class="button">
      {title}
      <input
        type="file"
        class="unseen"
        accept="image/*"
        onChange={async ({ currentTarget }) => {
          const [file] = currentTarget.files!;
          // the same photo may be chosen again
          currentTarget.value = '';
          if (file) await whileTelling(doing, () => onPhoto(file));
        }}
      />
    </label>
  );
}
