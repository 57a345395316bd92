import type { Dressing } from '../../src/formats/dressing.js';
import { demoFiles } from './demo.js';
import { deskOf } from './desk.js';
import { library, stitchText } from './library.js';
import type { Asks, Figure, Offered, Picture, What } from './messages.js';

/** What the page opens with, before its core has begun: the demo block dressed, and what stands on the shelf. */
export interface Ready {
  readonly dressing: Dressing;
  readonly picture: Picture;
  readonly offers: readonly Offered[];
  readonly figures: readonly Figure[];
}

/** All of it as the core answers; made once, when the page is built. */
export async function readyDemo(): Promise<Ready> {
  const desk = deskOf(library, stitchText);
  const ask = async <W extends What>(what: W, question: Asks[W]['ask']): Promise<Asks[W]['answer']> => {
    const answer = await desk({ id: 0, what, ask: question });
    if ('complaint' in answer) throw new Error(`the demo block: ${answer.complaint.wrong}`);
    return answer.answer as Asks[W]['answer'];
  };
  const [file, beside] = demoFiles();
  const { dressing } = await ask('open', { file, beside, seed: 1 });
  return {
    dressing,
    picture: await ask('dress', { dressing }),
    offers: await ask('offers', null),
    figures: await ask('figures', null),
  };
}
