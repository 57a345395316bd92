import { useRef, useState } from 'preact/hooks';
import { beginEmpty } from '../../state/drawing/board.js';
import { lengthIn, unit } from '../../state/units.js';
import { LengthField } from './length-field.js';

/** Usual sizes: finished blocks in inches, sewing fields of hoops in mm. */
const SIZES = {
  inch: [
    [152.4, 152.4],
    [203.2, 203.2],
    [254, 254],
    [304.8, 304.8],
  ],
  mm: [
    [100, 100],
    [130, 180],
    [200, 200],
    [200, 300],
  ],
} as const;

/** An empty block of a size of one's own. What is on the table stays kept in this browser. */
export function NewBlock() {
  const details = useRef<HTMLDetailsElement>(null);
  const [[width, height], setSize] = useState<readonly [number, number]>([150, 150]);
  return (
    <details class="new-block" ref={details}>
      <summary class="button">An empty block</summary>
      <div class="sizes">
        {SIZES[unit.value].map(([w, h]) => (
          <button
            key={`${w} ${h}`}
            type="button"
            aria-pressed={w === width && h === height}
            onClick={() => setSize([w, h])}
          >
            {lengthIn(w)
              .replace(/\.0+(?=\D)/, '')
              .replace(/ mm$/, '')}{' '}
            × {lengthIn(h).replace(/\.0+(?=\D)/, '')}
          </button>
        ))}
      </div>
      <LengthField
        title="Wide"
        value={width}
        least={20}
        most={1000}
        onChange={(mm) => setSize([mm, height])}
      />
      <LengthField
        title="High"
        value={height}
        least={20}
        most={1000}
        onChange={(mm) => setSize([width, mm])}
      />
      <button
        type="button"
        class="main"
        onClick={() => {
          details.current!.open = false;
          void beginEmpty(width, height);
        }}
      >
        Lay it out
      </button>
      <p class="hint">What is on the table now stays kept in this browser.</p>
    </details>
  );
}
