import type { Answer, Asks, Complaint, GivenFile, Question, What } from '../core/messages.js';

import { startCore } from './core-worker.js';

/** What could not be used, thrown where it was asked for. */
export class Refused extends Error {
  constructor(readonly complaint: Complaint) {
    super(`${complaint.where}: ${complaint.wrong}; ${complaint.right}`);
  }
}

const waiting = new Map<number, (answer: Answer) => void>();
let asked = 0;

let core: Worker | null = null;

function begunCore(): Worker {
  const worker = startCore();
  worker.onmessage = ({ data }: MessageEvent<Answer>) => {
    waiting.get(data.id)?.(data);
    waiting.delete(data.id);
  };
  return worker;
}

/** Asks the core, which works beside the page so that the page never stands still; it begins when it is first asked. */
export function ask<W extends What>(what: W, question: Asks[W]['ask']): Promise<Asks[W]['answer']> {
  const id = ++asked;
  return new Promise((resolve, reject) => {
    waiting.set(id, (answer) =>
      'complaint' in answer ? reject(new Refused(answer.complaint)) : resolve(answer.answer as never),
    );
    core ??= begunCore();
    core.postMessage({ id, what, ask: question } satisfies Question);
  });
}

let held: GivenFile | null = null;

/** Asks about a piece of work; the file that its block is read from goes ahead of the question when it is another one. */
export function askAbout<W extends What>(
  file: GivenFile | null,
  what: W,
  question: Asks[W]['ask'],
): Promise<Asks[W]['answer']> {
  if (file && file !== held) {
    held = file;
    void ask('hold', { file });
  }
  return ask(what, question);
}
