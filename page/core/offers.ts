import type { Block } from '../../src/block/block.js';
import { dress } from '../../src/dress.js';
import { referenceTo } from '../../src/fit/seam-reference.js';
import type { Dressing, Treatment } from '../../src/formats/dressing.js';
import { stitchOffer, treatmentOffer } from '../../src/harmony/offer.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import { drawnThread } from './drawn.js';
import type { Figure, Line, Offered, Tried } from './messages.js';
import { withThreads } from './with-threads.js';

/** All that a line can get: saved treatments first, then stitches alone. @param own names of the maker's own stitches */
export function offersOf(library: Dictionary, own: ReadonlySet<string> = new Set()): Offered[] {
  const treatments = [...library.treatments.values()].map((saved): Offered => {
    const { work, family } = treatmentOffer(saved, library);
    const { name, title, otherNames, use } = saved;
    const told = { parameters: [], threads: [], seats: [], corner: null };
    return { name, title, otherNames, use, family, work, ...told, shelf: 'treatment', isOwn: false };
  });
  const stitches = [...library.stitches.values()].map((stitch): Offered => {
    const { work } = stitchOffer(stitch, library);
    const { name, title, otherNames, use, family, parameters, threads, corner } = stitch;
    const seats = [...new Set(stitch.build({}).seats.map((seat) => seat.name))];
    const told = { parameters, threads, seats, corner };
    return { name, title, otherNames, use, family, work, ...told, shelf: 'stitch', isOwn: own.has(name) };
  });
  return [...treatments, ...stitches];
}

/** All figures that can stand in a patch. */
export const figuresOf = ({ ornaments }: Dictionary): Figure[] =>
  [...ornaments.values()].map(({ name, title, threads, parameters }) => ({
    name,
    title,
    threads: threads.length,
    size: parameters.find((one) => one.name === 'size')!,
  }));

/** An offer worked on one line of the block, the rest of it bare. */
export function tried(
  block: Block,
  dressing: Dressing,
  line: Line,
  { name, work }: Offered,
  library: Dictionary,
): Tried {
  const seam =
    line === 'outline'
      ? ({ id: 'outline', middle: null, ends: null } as const)
      : referenceTo(block.map.seams[line - 1]);
  const known = dressing.treatments.find((one) => one.seam.id === line);
  const alone = { ends: null, side: known?.side ?? null, reverse: known?.reverse ?? false };
  const treatment: Treatment = {
    ...withThreads(work, dressing.threads.length, known?.rows[0].thread),
    seam,
    ...alone,
  };
  const { ornaments: _, order: __, bare: ___, hooping: ____, ...rest } = dressing;
  const dressed = dress(block, { ...rest, treatments: [treatment] }, library);
  return { name, threads: dressed.design.stops.map(({ runs, thread }) => drawnThread(runs, thread)) };
}
