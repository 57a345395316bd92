import { OUTLINE } from '../../../src/formats/seam-drawing.js';
import { polylineLength } from '../../../src/geometry/polyline.js';
import { pointsOfSeam } from '../../core/drawn-lines.js';
import { chosenLine, drawing } from '../../state/drawing/board.js';
import { drawnTitle } from '../../state/drawing/board-keys.js';
import {
  bent,
  divided,
  isRound,
  lineOf,
  middleOf,
  stretchCount,
  turned,
  withoutNode,
} from '../../state/drawing/lines.js';
import { removeChosen } from '../../state/drawing/new-seam.js';
import { changeLine, putPoint } from '../../state/drawing/point-edits.js';
import { lengthIn } from '../../state/units.js';
import { LengthField } from './length-field.js';

/** The chosen line, point by point, in numbers. */
export function LineFacts() {
  const id = chosenLine.value;
  const line = id === null || !drawing.value ? null : lineOf(drawing.value, id);
  if (id === null || !line) return null;
  const { nodes, closed } = line;
  const isEnd = (n: number) => !closed && (n === 0 || n === nodes.length - 1);
  return (
    <section class="line-facts" aria-label="The chosen line">
      <div class="row">
        <h3>
          {drawnTitle(id)}, {lengthIn(polylineLength(pointsOfSeam(line)))}
        </h3>
        {id !== OUTLINE && (
          <button type="button" class="quiet" onClick={removeChosen}>
            Take it out
          </button>
        )}
      </div>
      <ol class="points">
        {nodes.map(({ at }, n) => (
          <li key={`${id} ${n}`}>
            <LengthField
              title={`Point ${n + 1} across`}
              value={at[0]}
              onChange={(x) => putPoint(id, n, [x, at[1]])}
            />
            <LengthField
              title={`Point ${n + 1} down`}
              value={at[1]}
              onChange={(y) => putPoint(id, n, [at[0], y])}
            />
            <div class="point-does">
              {!isEnd(n) && (
                <button
                  type="button"
                  aria-pressed={isRound(nodes[n])}
                  onClick={() => changeLine(id, (was) => turned(was, n, !isRound(was.nodes[n])))}
                >
                  Round
                </button>
              )}
              {n < stretchCount(line) && (
                <button
                  type="button"
                  title="One more point after this one"
                  onClick={() => changeLine(id, (was) => divided(was, n))}
                >
                  Point after
                </button>
              )}
              {n < stretchCount(line) && (nodes[n].after ?? nodes[(n + 1) % nodes.length].before) && (
                <button
                  type="button"
                  title="Straight from this point to the next"
                  onClick={() =>
                    changeLine(id, (was) => bent(was, n, middleOf(was, n), Number.POSITIVE_INFINITY))
                  }
                >
                  Straighten
                </button>
              )}
              {withoutNode(line, n) && (
                <button
                  type="button"
                  aria-label={`Take point ${n + 1} out`}
                  onClick={() => changeLine(id, (was) => withoutNode(was, n) ?? was)}
                >
                  ✕
                </button>
              )}
            </div>
          </li>
        ))}
      </ol>
    </section>
  );
}
