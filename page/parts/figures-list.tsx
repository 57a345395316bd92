import { change } from '../state/actions.js';
import { beginShape } from '../state/clear-draft.js';
import { freeSpot } from '../state/free-spot.js';
import {
  CLEAR,
  standingOn,
  withClearCircle,
  withClearPlace,
  withFigure,
  withFigureSize,
  withFigureTold,
  withoutClearPlace,
  withoutFigure,
} from '../state/standing.js';
import { lengthIn } from '../state/units.js';
import { onBlock, tableRoom, view } from '../state/view.js';
import { plural } from '../state/words.js';
import { figures, picture, work } from '../state/work.js';
import { Measure } from './measure.js';
import { Spools } from './spools.js';

/** Figures in the patches, and places that are kept clear for a monogram or a charm. */
export function FiguresList() {
  const dressing = work.value?.dressing;
  const placement = picture.value?.placement;
  if (!dressing || !placement) return null;
  // in the middle of what is seen, and on nothing that stands there
  const spot = (reach: number) =>
    freeSpot(
      onBlock(view.value, tableRoom.value.width / 2, tableRoom.value.height / 2),
      reach,
      standingOn(dressing, picture.value!),
      picture.value!.block,
    );
  return (
    <section>
      <h2>Figures and clear places</h2>
      <div class="row">
        <select
          aria-label="Put a figure on the block"
          value=""
          onChange={({ currentTarget }) => {
            const figure = figures.value.find(({ name }) => name === currentTarget.value);
            if (figure) change((was) => withFigure(was, figure, spot(figure.size.default / 2), placement));
            currentTarget.value = '';
          }}
        >
          <option value="">Put a figure on …</option>
          {figures.value.map(({ name, title }) => (
            <option key={name} value={name}>
              {title}
            </option>
          ))}
        </select>
      </div>
      <div class="row clear-row">
        <button type="button" onClick={() => change((was) => withClearPlace(was, spot(CLEAR), placement))}>
          Keep a place clear
        </button>
        <button
          type="button"
          onClick={() => {
            beginShape();
            document.querySelector<HTMLElement>('.table')?.focus();
          }}
        >
          Draw its shape
        </button>
      </div>
      {(dressing.ornaments ?? []).map(({ ornament, parameters, turn = 0, thread }, k) => {
        const figure = figures.value.find(({ name }) => name === ornament);
        if (!figure) return null;
        return (
          <Standing key={`${k} ${ornament}`} onRemove={() => change((was) => withoutFigure(was, k))}>
            <Measure
              title={figure.title}
              value={parameters.size ?? figure.size.default}
              min={figure.size.min}
              max={figure.size.max}
              step={0.5}
              show={lengthIn}
              onChange={(size) => change((was) => withFigureSize(was, k, size), `figure size ${k}`)}
            />
            <details class="more figure-more">
              <summary>Turn and thread</summary>
              <Measure
                title="Turned"
                value={turn === 'fit' ? 0 : turn}
                min={-180}
                max={180}
                step={5}
                show={(degrees) => (turn === 'fit' ? 'as it fits' : `${degrees}°`)}
                onChange={(degrees) =>
                  change((was) => withFigureTold(was, k, { turn: degrees }), `figure turn ${k}`)
                }
              />
              <Spools
                title="Thread"
                chosen={thread}
                onChoose={(chosen) => change((was) => withFigureTold(was, k, { thread: chosen }))}
              />
            </details>
          </Standing>
        );
      })}
      {(dressing.keepClear ?? []).map(
        ({ name, circle, polygon }, k) =>
          (polygon && (
            <Standing key={name} onRemove={() => change((was) => withoutClearPlace(was, k))}>
              <p class="shape">
                {name}
                <span class="aside">{plural(polygon.length, 'corner')}</span>
              </p>
            </Standing>
          )) ||
          (circle && (
            <Standing key={name} onRemove={() => change((was) => withoutClearPlace(was, k))}>
              <Measure
                title={name}
                value={circle.radius}
                min={2}
                max={60}
                step={0.5}
                show={lengthIn}
                onChange={(radius) =>
                  change((was) => withClearCircle(was, k, (one) => ({ ...one, radius })), `clear size ${k}`)
                }
              />
            </Standing>
          )),
      )}
    </section>
  );
}

function Standing({ children, onRemove }: { children: preact.ComponentChildren; onRemove: () => void }) {
  return (
    <div class="standing">
      {children}
      <button type="button" class="leave" aria-label="Take off" title="Take off" onClick={onRemove}>
        <span aria-hidden="true">×</span>
      </button>
    </div>
  );
}
