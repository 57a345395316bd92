import { useComputed } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Line, Offered } from '../core/messages.js';
import { drawCard } from '../draw/card.js';
import { change } from '../state/actions.js';
import { inThreadsOf, referenceOf } from '../state/choose-offer.js';
import { treatmentOf, withWork } from '../state/edits.js';
import { tryOn } from '../state/try-on.js';
import { picture, work } from '../state/work.js';

/** One thing on the shelf, drawn on the touched line once it is in sight. */
export function OfferCard({ line, offer }: { line: Line; offer: Offered }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    let isThere = true;
    const watch = new IntersectionObserver(async ([{ isIntersecting }]) => {
      if (!isIntersecting) return;
      watch.disconnect();
      const tried = await tryOn(line, offer, () => isThere);
      if (tried && isThere && canvas.current && picture.value)
        drawCard(canvas.current, picture.value, line, tried);
    });
    watch.observe(canvas.current!);
    return () => {
      isThere = false;
      watch.disconnect();
    };
  }, [line, offer]);
  // a shelf has dozens of cards, and work changes from frame to frame while it is dragged
  const isChosen = useComputed(() => {
    const now = work.value && treatmentOf(work.value.dressing, line);
    return (
      now !== null &&
      now.rows.map((row) => row.stitch).join() === stitchesOf(offer) &&
      (now.accents?.length ?? 0) === (offer.work.accents?.length ?? 0)
    );
  });
  return (
    <button
      type="button"
      class="card"
      aria-pressed={isChosen.value}
      title={offer.otherNames.join(', ')}
      onClick={() => change((was) => withWork(was, referenceOf(line), inThreadsOf(was, line, offer.work)))}
    >
      <canvas ref={canvas} width={1} height={1} />
      <span>{offer.title}</span>
    </button>
  );
}

const stitchesOf = ({ work: { rows } }: Offered): string => rows.map((row) => row.stitch).join();
