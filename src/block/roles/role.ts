import type { Role } from '../../formats/stop-roles.js';

export { ROLES, type Role } from '../../formats/stop-roles.js';

/** How each is told on screen. */
export const ROLE_NAMES: Readonly<Record<Role, string>> = {
  map: 'placement map',
  placement: 'placement line',
  seam: 'seam',
  'tack-down': 'tack-down',
  edge: 'zigzag or satin edge',
  allowance: 'allowance line',
  fill: 'fill',
  other: 'other',
};

/** What one stop was taken for, and why. */
export interface StopRole {
  /** from 1 */
  readonly stop: number;
  readonly role: Role;
  /** what speaks for it, for people */
  readonly evidence: string;
}

/** What the stops of a stitch file were taken for, and what follows for the dressing. */
export interface Recognized {
  readonly roles: readonly StopRole[];
  /** the stops whose lines are the block's seams and outline; empty where no line was found */
  readonly seams: readonly number[];
  /** new stops go in behind this one: the last of piecing, before trimming and the edge */
  readonly after: number;
}
