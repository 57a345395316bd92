/** What every command that looks things up in the dictionary says of `--library`. */
export const libraryHelp =
  'your own stitches, ornaments and treatments (default: $SEAMWRIGHT_LIBRARY, else your configuration folder)';
