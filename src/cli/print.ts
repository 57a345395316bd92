import { type Finding, worstFirst } from '../finding.js';
import type { InputError } from '../input-error.js';

/** Writes text on standard output and ends its last line; done when it is out, or nobody reads any more. */
export function print(text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    process.stdout.write(text.endsWith('\n') ? text : `${text}\n`, (error) => {
      if (error && (error as NodeJS.ErrnoException).code !== 'EPIPE') reject(error);
      else resolve();
    });
  });
}

/** Writes the one JSON document of a run. */
export const printJson = (document: unknown): Promise<void> => print(JSON.stringify(document));

/** Files of a maker's own library that could not be read are told; the work goes on without them. */
export function sayUnread(unread: readonly InputError[]): void {
  for (const { message } of unread) process.stderr.write(`seamwright: left out: ${message}\n`);
}

/** Work that was done but has findings of level error ends with status 1. */
export function settleStatus(findings: readonly Finding[]): void {
  if (worstFirst(findings)[0]?.level === 'error') process.exitCode = 1;
}
