/**
 * What a person gave cannot be used. Three parts make its one line: where it is (file and place), what is wrong, what
 * would be right. The command line prints it and ends with status 2; nothing has been written by then.
 */
export class InputError extends Error {
  constructor(
    /** kebab-case, for programs */
    readonly code: string,
    /** file, option, or place inside a file: "panel.svg line 12", "--width" */
    readonly where: string,
    readonly wrong: string,
    readonly right: string,
  ) {
    super(`${where}: ${wrong}; ${right}`);
    this.name = 'InputError';
  }
}
