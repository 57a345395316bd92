import { placedPoint } from '../../src/geometry/placement.js';
import { change } from '../state/actions.js';
import { withClearAt, withFigureAt, withoutClearPlace, withoutFigure } from '../state/standing.js';
import { picture, work } from '../state/work.js';
import { ClearShapeHandles } from './clear-shape-handles.js';
import { PlaceHandle } from './place-handle.js';

/** Figures and places kept clear are dragged about on the block itself. */
export function FigureHandles() {
  const now = picture.value;
  const dressing = work.value?.dressing;
  if (!now || !dressing) return null;
  const { placement } = now;
  return (
    <div class="on-table">
      {(dressing.ornaments ?? []).map(({ ornament, at }, k) => {
        const middle = at ? placedPoint([...at], placement) : now.ornaments[k];
        return (
          middle && (
            <PlaceHandle
              key={`${k} ${ornament}`}
              label={`${ornament}, figure ${k + 1}`}
              at={middle}
              onMove={(to) => change((was) => withFigureAt(was, k, to, placement), `figure ${k}`)}
              onRemove={() => change((was) => withoutFigure(was, k))}
            />
          )
        );
      })}
      {(dressing.keepClear ?? []).map(
        ({ name, circle, polygon }, k) =>
          (polygon && <ClearShapeHandles key={name} {...{ k, name, polygon, placement }} />) ||
          (circle && (
            <PlaceHandle
              key={name}
              label={name}
              at={placedPoint([...circle.at], placement)}
              onMove={(to) => change((was) => withClearAt(was, k, to, placement), `clear ${k}`)}
              onRemove={() => change((was) => withoutClearPlace(was, k))}
            />
          )),
      )}
    </div>
  );
}
