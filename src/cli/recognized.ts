import { basename } from 'node:path';
import type { Recognized, Role } from '../block/roles/role.js';
import { InputError } from '../input-error.js';
import type { BlockFile } from './read-block.js';

/**
 * What the stops of a stitch file are for; null where the maker names the seams herself, and for a drawing.
 * @throws InputError when roles are given beside named stops, for a drawing, or for a stop that there is not
 */
export async function recognizedIn(
  file: BlockFile,
  { stops, role }: { readonly stops?: readonly number[]; readonly role?: ReadonlyMap<number, Role> },
): Promise<Recognized | null> {
  if (role && (stops || file.kind !== 'stitch-file')) {
    const [wrong, right] =
      file.kind === 'stitch-file'
        ? ['stands beside --stops, which names the seams itself', 'leave one of them away']
        : [`${file.path} is a drawing and has no color stops`, 'leave --role away'];
    throw new InputError('role-of-drawing', '--role', wrong, right);
  }
  if (stops || file.kind !== 'stitch-file') return null;
  const [{ readDst }, { recognizeStops }] = await Promise.all([
    import('../formats/dst-read.js'),
    import('../block/roles/recognize.js'),
  ]);
  const found = recognizeStops(readDst(file.bytes, basename(file.path)), role);
  const missing = [...(role?.keys() ?? [])].find((stop) => stop > found.roles.length);
  if (missing !== undefined) {
    throw new InputError(
      'no-such-stop',
      '--role',
      `there is no stop ${missing}`,
      `it has ${found.roles.length}`,
    );
  }
  return found;
}

/** The same, of a block that is to be dressed. @throws InputError when no seam was found */
export async function seamsRecognizedIn(
  ...asked: Parameters<typeof recognizedIn>
): Promise<Recognized | null> {
  const found = await recognizedIn(...asked);
  if (found === null || found.seams.length > 0) return found;
  throw new InputError(
    'stops-missing',
    basename(asked[0].path),
    'none of its color stops looks like the seams of a block',
    `name them with --stops 1,2 (seamwright seams ${asked[0].path} lists them)`,
  );
}
