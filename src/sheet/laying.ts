import type { Role } from '../block/roles/role.js';

/** What is laid under the needle before a stop of the block's own, and after it. */
export interface Laying {
  readonly before: readonly string[];
  readonly after: string | undefined;
}

/** Common practice. The next piece is folded over its seam once that is sewn. */
const FIRST_PIECE = 'Lay the first piece of fabric.';
const NEXT_PIECE =
  'Lay the next piece face down on the cloth laid before, its edge past the line of the next seam by the seam allowance.';
const ON_TOP = 'Lay the fabric over the line just sewn.';

/**
 * What is laid along the stops of a block that is pieced in the hoop: the first piece, a piece before each seam, and what
 * lies on top after its placement line.
 */
export function layings(roles: readonly Role[]): Laying[] {
  let hasCloth = false;
  return roles.map((role, i): Laying => {
    const isSewnOn = role === 'seam' || role === 'tack-down';
    const before = [
      ...(isSewnOn && !hasCloth ? [FIRST_PIECE] : []),
      ...(role === 'seam' ? [NEXT_PIECE] : []),
    ];
    const after = laidAfter(role, nextOf(roles, i), hasCloth);
    hasCloth ||= isSewnOn || after !== undefined;
    return { before, after };
  });
}

/** What is sewn next, but for a line that only shows where a piece is to end. */
function nextOf(roles: readonly Role[], i: number): Role | undefined {
  let next = i + 1;
  while (roles[next] === 'allowance') next++;
  return roles[next];
}

function laidAfter(role: Role, next: Role | undefined, hasCloth: boolean): string | undefined {
  if (role === 'map') return FIRST_PIECE;
  if (role !== 'placement' || next === 'edge') return undefined;
  // where it shows a seam, its piece is laid as that of any seam
  return next === 'seam' && hasCloth ? undefined : ON_TOP;
}
