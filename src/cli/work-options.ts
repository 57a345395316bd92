import type { Command } from 'commander';
import { HAND_THREADS, MOST_PULL } from '../formats/dressing.js';
import { declareBlockOptions } from './block-options.js';
import { choiceOption } from './choices.js';
import { fabricsOption } from './fabric-option.js';
import { GUIDE_HEIGHT, GUIDE_LENGTH } from './guide-options.js';
import { USUAL_BASTING } from './hooping-options.js';
import { libraryHelp } from './library-option.js';
import { countOption, lengthOption, listOption, numberOption } from './numbers.js';
import { pinsOption } from './pins-option.js';
import { hoopOption } from './place-options.js';
import { meetingsOption, orderOption, settingsOption } from './seam-options.js';
import { nameOption } from './single-options.js';

/** How a block is to be dressed: what `dress` and all commands that show a dressed block take. */
export function declareWorkOptions(command: Command): Command {
  return declareBlockOptions(command)
    .option(
      '--after <n>',
      'put the new stops in after this one (default: the last of piecing, or of --stops)',
      countOption('--after', 1, 999),
    )
    .option(
      '--stitch <name>',
      'one stitch for all seams (default: chosen seam by seam)',
      nameOption('--stitch'),
    )
    .option('--treatment <name>', 'one saved treatment for all seams, instead', nameOption('--treatment'))
    .option('--thread <color>', 'color of the new stops, such as #7a2f3b or darkred', nameOption('--thread'))
    .option('--seam <list>', 'dress these seams only, such as 1,4-6', listOption('--seam'))
    .option('--bare <list>', 'leave these seams bare', listOption('--bare'))
    .option(
      '--set <seams:what=how...>',
      'one thing of single seams: stitch, side, reverse, ends, corner, passes, heavy, thread or a size, such as 4:side=left 5-7:width=6',
      settingsOption('--set'),
    )
    .option('--order <seams>', 'sew these in this order, such as 4,2,edge', orderOption('--order'))
    .option(
      '--stop-per <what>',
      'what gets a color stop of its own: each row (usual), each thread, or all together one',
      choiceOption('--stop-per', ['row', 'thread', 'all']),
    )
    .option('--scale <factor>', 'make the block larger or smaller', numberOption('--scale', 0.05, 20, '0.7'))
    .option('--turn <degrees>', 'turn the block, counterclockwise', numberOption('--turn', -360, 360, '90'))
    .option('--hoop <width x height>', 'the sewing field it is for, such as 130x180', hoopOption('--hoop'))
    .option('--fit-hoop <width x height>', 'as large as this sewing field takes', hoopOption('--fit-hoop'))
    .option(
      '--pull <mm>',
      `satin so much wider to either side, where cloth draws in under it, up to ${MOST_PULL} (default: 0)`,
      lengthOption('--pull', 0, MOST_PULL),
    )
    .option('--leave-out <list>', 'color stops of the stitch file not to sew', listOption('--leave-out'))
    .option('--repeat <mm>', 'wanted length of a repeat', lengthOption('--repeat', 1, 60))
    .option('--width <mm>', 'width of the stitch across the seam', lengthOption('--width', 1, 40))
    .option(
      '--heavy <thread>',
      `rows as heavy as this thread of a hand: ${HAND_THREADS.join(', ')} (default: three passes)`,
      choiceOption('--heavy', HAND_THREADS),
    )
    .option(
      '--ends <manner>',
      'where a seam butts into another: tuck, bevel or short',
      choiceOption('--ends', ['tuck', 'bevel', 'short']),
    )
    .option('--edge <name>', 'stitch for the outline too', nameOption('--edge'))
    .option(
      '--guide <shape>',
      'stitch on a line drawn along the seams: wave, scallop, points or interlace (two lines)',
      choiceOption('--guide', ['wave', 'scallop', 'points', 'interlace']),
    )
    .option(
      '--guide-height <mm>',
      `from its lowest to its highest point (default: ${GUIDE_HEIGHT})`,
      lengthOption('--guide-height', 0.5, 40),
    )
    .option(
      '--guide-length <mm>',
      `of one wave along the seam (default: ${GUIDE_LENGTH})`,
      lengthOption('--guide-length', 2, 200),
    )
    .option(
      '--outline <kind>',
      'what becomes of the outline: trim, join or free',
      choiceOption('--outline', ['trim', 'join', 'free']),
    )
    .option('--gap <mm>', 'clear cloth between bands at a junction', lengthOption('--gap', 0, 10))
    .option('--ornament <name...>', 'figures for the roomiest patches, one in each')
    .option(
      '--keep-clear-stops <list>',
      'color stops of the stitch file that nothing new is sewn over, such as 7',
      listOption('--keep-clear-stops'),
    )
    .option(
      '--fabric <patches=colors...>',
      'fabrics of patches: a color, several with their shares, or a PNG or JPEG picture, such as 3=#7a2f3b 4=navy:70,white:30,busy:0.6 5=calico.jpg',
      fabricsOption('--fabric'),
    )
    .option('--mix', 'dress the whole block from the library, no two that meet alike')
    .option(
      '--seed <n>',
      'with --mix and --by-hand: another number, another block; the same one, the same (default: 1)',
      countOption('--seed', 0, 999_999_999),
    )
    .option(
      '--threads <n>',
      'with --mix: so many threads (default: 1, old gold)',
      countOption('--threads', 1, 12),
    )
    .option(
      '--stash <file>',
      'with --mix: take the threads from your own, a .csv file with columns name and color',
      nameOption('--stash'),
    )
    .option(
      '--pin <seam=name...>',
      'with --mix: what a seam has in any case, such as 3=feather',
      pinsOption('--pin'),
    )
    .option(
      '--by-hand <share>',
      'how uneven the hand is: 0, even, to 1',
      numberOption('--by-hand', 0, 1, '0.4'),
    )
    .option('--placement', 'first the outline on the stabilizer, to lay a finished block on')
    .option(
      '--basting [mm]',
      `then a box of long stitches so far outside the block, to be pulled out (${USUAL_BASTING})`,
      lengthOption('--basting', 1, 50),
    )
    .option(
      '--align <seam@seam>',
      'then the needle comes to junctions, to see whether the block lies right, such as 4@3,7@2,9@1',
      meetingsOption('--align'),
    )
    .option('--align-crosses', 'with --align: crosses of long stitches there, to be pulled out')
    .option('--library <folder>', libraryHelp, nameOption('--library'))
    .option('--alone', 'leave the color stops of the stitch file out; the new ones lie where they would');
}
