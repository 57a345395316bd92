import { type Finding, worstFirst } from '../finding.js';
import type { InputError } from '../input-error.js';

/** Writes text on standard output and ends its last line. */
export function print(text: string): void {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
}

/** Writes the one JSON document of a run. */
export function printJson(document: unknown): void {
  process.stdout.write(`${JSON.stringify(document)}\n`);
}

/** Files of a maker's own library that could not be read are told; the work goes on without them. */
export function sayUnread(unread: readonly InputError[]): void {
  for (const { message } of unread) process.stderr.write(`seamwright: left out: ${message}\n`);
}

/** Work that was done but has findings of level error ends with status 1. */
export function settleStatus(findings: readonly Finding[]): void {
  if (worstFirst(findings)[0]?.level === 'error') process.exitCode = 1;
}
