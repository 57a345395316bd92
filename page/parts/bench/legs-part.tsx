import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { chosenLeg } from '../../state/bench/chosen-leg.js';
import {
  KINDS,
  type LegPlace,
  legChanged,
  legRemoved,
  legShifted,
  legsOf,
  PASSES,
  passesOf,
  pointsOfLeg,
  withPasses,
} from '../../state/bench/legs.js';
import { benched, changeStitch, chosen } from '../../state/bench/on-bench.js';
import { bendAdded, canBend } from '../../state/bench/points.js';
import { Choice } from '../choice.js';

/** The legs in the order in which a hand works them; the chosen one with its passes. */
export function LegsPart({ record }: { record: StitchRecord }) {
  return (
    <section>
      <h2>Legs, in the order of work</h2>
      <ol class="legs">
        {legsOf(record).map((place) => {
          const { name, kind } = place.leg;
          const isOpen = chosenLeg.value === name;
          return (
            <li key={`${place.at} ${name}`}>
              <button
                type="button"
                class="what"
                aria-expanded={isOpen}
                onClick={() => {
                  chosenLeg.value = isOpen ? null : name;
                }}
              >
                {name}
                {place.among !== null && ' (copies)'}
                <span class="aside">{KINDS.find(([one]) => one === kind)?.[1]}</span>
              </button>
              {isOpen && <LegDetails record={record} place={place} />}
            </li>
          );
        })}
      </ol>
    </section>
  );
}

function LegDetails({ record, place }: { record: StitchRecord; place: LegPlace }) {
  const { at, leg } = place;
  const isUnder = leg.kind === 'under';
  const most = Math.max(6, passesOf(leg));
  const counts = Array.from({ length: most + 1 }, (_, k) => k).filter((k) => k > 0 || isUnder);
  return (
    <div class="details">
      <p class="aside">by {pointsOfLeg(leg).join(', ')}</p>
      <Choice
        title="Passes"
        value={String(passesOf(leg))}
        options={counts.map((k) => [
          String(k),
          k === 0 ? 'only where needed' : `${k} where a row has ${PASSES}`,
        ])}
        onChoose={(value) =>
          changeStitch((now) => legChanged(now, place, (one) => withPasses(one, Number(value))))
        }
      />
      <div class="row wrap">
        <button
          type="button"
          disabled={at === 0}
          onClick={() => changeStitch((now) => legShifted(now, at, -1))}
        >
          Sooner
        </button>
        <button
          type="button"
          disabled={at === record.legs.length - 1}
          onClick={() => changeStitch((now) => legShifted(now, at, 1))}
        >
          Later
        </button>
        {canBend(place) && (
          <button type="button" onClick={() => bend(place)}>
            Bend it
          </button>
        )}
        <button
          type="button"
          class="quiet"
          disabled={legsOf(record).length === 1}
          onClick={() => changeStitch((now) => legRemoved(now, place))}
        >
          Take it out
        </button>
      </div>
    </div>
  );
}

function bend(place: LegPlace): void {
  const spots = benched.value?.unit?.spots ?? [];
  const [from, to] = pointsOfLeg(place.leg).map((name) =>
    spots.find((spot) => spot.name === name || spot.name.startsWith(`${name}[`)),
  );
  if (!from || !to) return;
  changeStitch((now) => {
    const { record, name } = bendAdded(now, place, [(from.u + to.u) / 2, (from.v + to.v) / 2]);
    chosen.value = name;
    return record;
  });
}
