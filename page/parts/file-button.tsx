interface Asked {
  readonly title: string;
  /** endings or kinds of files, such as .svg,.dst or image/* */
  readonly accept: string;
  /** no more than one is taken */
  readonly isOne?: boolean;
  readonly onFiles: (files: readonly File[]) => Promise<unknown>;
}

/** Lets the maker choose files. */
export function FileButton({ title, accept, isOne = false, onFiles }: Asked) {
  return (
    <label class="button">
      {title}
      <input
        type="file"
        class="unseen"
        accept={accept}
        multiple={!isOne}
        onChange={async ({ currentTarget }) => {
          const files = [...currentTarget.files!];
          // the same file may be chosen again
          currentTarget.value = '';
          if (files.length > 0) await onFiles(files);
        }}
      />
    </label>
  );
}
