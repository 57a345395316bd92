import { ROLES, type Role } from '../block/roles/role.js';
import { InputError } from '../input-error.js';

/** Parser of what stops are for, such as '3=seam,7=edge'. */
export function rolesOption(option: string): (word: string) => ReadonlyMap<number, Role> {
  return (word) =>
    new Map(
      word.split(',').map((part): [number, Role] => {
        const [stop, role] = /^\s*(\d{1,4})\s*=\s*([a-z-]+)\s*$/.exec(part)?.slice(1) ?? [];
        if (Number(stop) > 0 && (ROLES as readonly string[]).includes(role))
          return [Number(stop), role as Role];
        throw new InputError(
          'bad-role',
          option,
          `'${part}' says of no stop what it is for`,
          `give stops, each with ${ROLES.join(', ')}, such as 3=seam,7=edge`,
        );
      }),
    );
}
