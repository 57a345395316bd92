import type { Treatment } from '../../../src/formats/dressing.js';
import type { Line } from '../../core/messages.js';
import { change } from '../../state/actions.js';
import { withGuide, withGuideSize } from '../../state/edits.js';
import { GUIDE_HEIGHTS, GUIDE_LENGTHS } from '../../state/guide-sizes.js';
import { lookedAt } from '../../state/more-open.js';
import { lengthIn } from '../../state/units.js';
import { Choice } from '../choice.js';
import { Fold } from '../fold.js';
import { Measure } from '../measure.js';

const SHAPES = [
  ['', 'the seam itself'],
  ['wave', 'waves'],
  ['scallop', 'scallops'],
  ['points', 'points'],
  ['interlace', 'two interlaced lines'],
] as const;

/** What the stitch follows: the seam, or waves along it. */
export function GuideLine({ line, treatment: { guide } }: { line: Line; treatment: Treatment }) {
  const shape = guide?.shape ?? '';
  return (
    <Fold onToggle={lookedAt('guide')} title="Guide line" now={SHAPES.find(([key]) => key === shape)![1]}>
      <Choice
        title="It follows"
        value={shape}
        options={SHAPES}
        onChoose={(wanted) => change((was) => withGuide(was, line, wanted))}
      />
      {guide && (
        <>
          <Measure
            title="High"
            value={guide.height}
            {...GUIDE_HEIGHTS}
            show={lengthIn}
            onChange={(height) => change((was) => withGuideSize(was, line, { height }), `guide ${line}`)}
          />
          <Measure
            title="One wave long"
            value={guide.length}
            {...GUIDE_LENGTHS}
            show={lengthIn}
            onChange={(length) => change((was) => withGuideSize(was, line, { length }), `guide ${line}`)}
          />
          <p class="aside">A wave is at most half as high as it is long.</p>
        </>
      )}
    </Fold>
  );
}
