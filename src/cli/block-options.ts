import type { Command } from 'commander';
import { SNAP } from '../geometry/tolerances.js';
import { lengthOption, listOption } from './numbers.js';
import { rolesOption } from './role-option.js';
import { meetingsOption } from './seam-options.js';

/** Which block it is: what its color stops are, and how its lines meet. */
export function declareBlockOptions(command: Command): Command {
  return command
    .option(
      '--stops <list>',
      'color stops of the stitch file that are the seams, such as 1,2 (default: as they are recognized)',
      listOption('--stops'),
    )
    .option('--role <stops=what>', 'what a color stop is, such as 3=seam,7=edge', rolesOption('--role'))
    .option('--snap <mm>', `ends nearer than this meet (default: ${SNAP})`, lengthOption('--snap', 0, 5))
    .option(
      '--through <seam@seam>',
      'who runs through where two seams meet, such as 4@3: seam 4 does',
      meetingsOption('--through'),
    )
    .option('--join <seam@seam>', 'two seams are one line where they meet', meetingsOption('--join'))
    .option(
      '--split <seam@seam>',
      'a seam is two where it meets another; these three count seams as they are by themselves',
      meetingsOption('--split'),
    );
}
