import { type Finding, worstFirst } from '../finding.js';

/** Writes text on standard output and ends its last line. */
export function print(text: string): void {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
}

/** Writes the one JSON document of a run. */
export function printJson(document: unknown): void {
  process.stdout.write(`${JSON.stringify(document)}\n`);
}

/** Work that was done but has findings of level error ends with status 1. */
export function settleStatus(findings: readonly Finding[]): void {
  if (worstFirst(findings)[0]?.level === 'error') process.exitCode = 1;
}
