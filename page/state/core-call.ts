import type { Answer, Asks, Complaint, Question, What } from '../core/messages.js';
import Core from '../core/worker.ts?worker&inline';

/** What could not be used, thrown where it was asked for. */
export class Refused extends Error {
  constructor(readonly complaint: Complaint) {
    super(`${complaint.where}: ${complaint.wrong}; ${complaint.right}`);
  }
}

const core = new Core();
const waiting = new Map<number, (answer: Answer) => void>();
let asked = 0;

core.onmessage = ({ data }: MessageEvent<Answer>) => {
  waiting.get(data.id)?.(data);
  waiting.delete(data.id);
};

/** Asks the core, which works beside the page so that the page never stands still. */
export function ask<W extends What>(what: W, question: Asks[W]['ask']): Promise<Asks[W]['answer']> {
  const id = ++asked;
  return new Promise((resolve, reject) => {
    waiting.set(id, (answer) =>
      'complaint' in answer ? reject(new Refused(answer.complaint)) : resolve(answer.answer as never),
    );
    core.postMessage({ id, what, ask: question } satisfies Question);
  });
}
