import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { chosenLeg } from '../../state/bench/chosen-leg.js';
import { KINDS, legsOf } from '../../state/bench/legs.js';
import { threadOf, threadsOf } from '../../state/bench/threads.js';
import { LegDetails } from './leg-details.js';

/** The legs in the order in which a hand works them; the chosen one with all that can be said of it. */
export function LegsPart({ record }: { record: StitchRecord }) {
  const isOneOfSeveral = threadsOf(record).length > 1;
  return (
    <section>
      <h2>Legs, in the order of work</h2>
      <ol class="legs">
        {legsOf(record).map((place) => {
          const { name, kind } = place.leg;
          const isOpen = chosenLeg.value === name;
          return (
            <li key={name}>
              <button
                type="button"
                class="what"
                aria-expanded={isOpen}
                onClick={() => {
                  chosenLeg.value = isOpen ? null : name;
                }}
              >
                {name}
                <span class="aside">
                  {[
                    KINDS.find(([one]) => one === kind)?.[1],
                    ...(isOneOfSeveral ? [threadOf(place.leg, record)] : []),
                    ...timesOf(record, place.at),
                  ].join(', ')}
                </span>
              </button>
              {isOpen && <LegDetails record={record} place={place} />}
            </li>
          );
        })}
      </ol>
    </section>
  );
}

function timesOf({ legs }: StitchRecord, at: number): string[] {
  const entry = legs[at];
  return 'legs' in entry ? [`${entry.count} times`] : [];
}
