/** A file's name without its folders and its ending; a name that is nothing but an ending stays. */
export const baseName = (fileName: string): string =>
  fileName.replace(/^.*[/\\]/, '').replace(/(.)\.[^.]*$/, '$1');
