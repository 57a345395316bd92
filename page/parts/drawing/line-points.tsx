import type { Point } from '../../../src/geometry/point.js';
import { drawing } from '../../state/drawing/board.js';
import { isRound, lineOf, middleOf, stretchCount } from '../../state/drawing/lines.js';
import { lengthIn } from '../../state/units.js';
import { LineGrip, STEP } from './line-grip.js';

/** The points of the chosen line, and between them the middles that bend it. */
export function LinePoints({ id }: { id: number }) {
  const line = drawing.value && lineOf(drawing.value, id);
  if (!line) return null;
  const count = line.nodes.length;
  const say = ([x, y]: Point) => `at ${lengthIn(x)} across, ${lengthIn(y)} down`;
  return (
    <fieldset
      class="on-table line-points"
      aria-label={`Points of the line: arrow keys move them by ${lengthIn(STEP)}, with Shift by ${lengthIn(STEP / 10)}`}
    >
      {line.nodes.map((node, n) => (
        <LineGrip
          key={`p${n}`}
          grip={{ line: id, kind: 'point', place: n }}
          at={node.at}
          isRound={isRound(node)}
          label={`Point ${n + 1} of ${count}${isRound(node) ? ', round' : ''}, ${say(node.at)}`}
        />
      ))}
      {Array.from({ length: stretchCount(line) }, (_, s) => {
        const at = middleOf(line, s);
        return (
          <LineGrip
            key={`b${s}`}
            grip={{ line: id, kind: 'bend', place: s }}
            at={at}
            isRound={false}
            label={`Bend between points ${s + 1} and ${((s + 1) % count) + 1}, ${say(at)}`}
          />
        );
      })}
    </fieldset>
  );
}
