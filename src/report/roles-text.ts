import { type Recognized, ROLE_NAMES, ROLES } from '../block/roles/role.js';
import type { Finding } from '../finding.js';
import { numberList } from './table.js';

/** What the stops of a stitch file were taken for, as a note beside the findings of its block. */
export function rolesFinding({ roles, seams, after }: Recognized): Finding {
  const taken = ROLES.flatMap((role) => {
    const stops = roles.filter((one) => one.role === role).map(({ stop }) => stop);
    return stops.length ? [`${ROLE_NAMES[role]} ${numberList(stops)}`] : [];
  });
  return {
    level: 'note',
    code: 'stops-recognized',
    message:
      `its color stops were taken for: ${taken.join('; ')}; the seams come from ${numberList(seams)}, and new stops go in ` +
      `after ${after}; --role 3=seam says of a stop what it is, --stops names the seams, --after the place`,
  };
}
