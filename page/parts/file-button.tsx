import type { GivenFile } from '../core/messages.js';
import { givenFiles } from '../state/given-files.js';

interface Asked {
  readonly title: string;
  /** endings of files, such as .svg,.dst */
  readonly accept: string;
  readonly onFiles: (files: readonly GivenFile[]) => Promise<unknown>;
}

/** Lets the maker choose files. */
export function FileButton({ title, accept, onFiles }: Asked) {
  return (
    <label class="button">
      {title}
      <input
        type="file"
        class="unseen"
        accept={accept}
        multiple
        onChange={async ({ currentTarget }) => {
          const files = await givenFiles(currentTarget.files!);
          // the same file may be chosen again
          currentTarget.value = '';
          if (files.length) await onFiles(files);
        }}
      />
    </label>
  );
}
