import { deskOf } from './desk.js';
import { library, stitchText } from './library.js';
import type { Question } from './messages.js';

const answer = deskOf(library, stitchText);
let last: Promise<unknown> = Promise.resolve();

// One after the other: a later question may be about what an earlier one put on the desk.
self.onmessage = ({ data }: MessageEvent<Question>) => {
  last = last.then(async () => self.postMessage(await answer(data)));
};
