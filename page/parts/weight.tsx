import { HAND_THREADS, type HandThread, type Weighted } from '../../src/formats/dressing.js';
import { DEFAULT_PASSES } from '../../src/harmony/passes.js';
import { handThreadTitle } from '../../src/needle/heaviness.js';
import { Choice } from './choice.js';
import { Measure } from './measure.js';

interface Weighing {
  readonly row: Weighted;
  readonly onWeigh: (weight: Weighted) => void;
}

/** How heavy a stitch is: as a thread of the hand, or in so many passes. */
export function Weight({ row, onWeigh }: Weighing) {
  const passes = row.passes ?? DEFAULT_PASSES;
  return (
    <>
      <Choice
        title="Weight"
        value={row.heavy ?? ''}
        options={[
          ...HAND_THREADS.map((hand) => [hand, `as ${handThreadTitle(hand)}`] as const),
          ['', 'by passes'],
        ]}
        onChoose={(hand) => onWeigh(hand ? { heavy: hand as HandThread } : { passes })}
      />
      {!row.heavy && (
        <Measure
          title="Passes"
          value={passes}
          min={1}
          max={6}
          step={1}
          show={String}
          onChange={(count) => onWeigh({ passes: count })}
        />
      )}
    </>
  );
}
