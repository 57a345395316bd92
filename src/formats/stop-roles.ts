/** What a color stop of a stitch file is for. */
export const ROLES = ['map', 'placement', 'seam', 'tack-down', 'edge', 'allowance', 'fill', 'other'] as const;
export type Role = (typeof ROLES)[number];

/** A color stop, from 1, and what the maker says it is for. */
export interface RoleSaid {
  readonly stop: number;
  readonly role: Role;
}
