import type { Pattern } from './pattern.js';
import { OVERLAP, type Tiling } from './tiles.js';

/** How a pattern is used, and what to mind: a sentence or two each. Common practice. */
export function adviceFor({ mirrored }: Pattern, { tiles, rows, columns }: Tiling): string[] {
  return [
    'Print at 100 % and hold a ruler to the bars. Where they are not as long as they say, nothing on these pages is.',
    ...(tiles.length > 1
      ? [
          `The pattern takes ${rows} by ${columns} pages, which show ${OVERLAP} mm of each other. Cut one of two neighbors along its ` +
            'dotted line, lay the crosses of both on each other, and glue.',
        ]
      : []),
    mirrored
      ? 'This pattern is mirrored: it is for pencil, pen or paper that is laid face down and ironed on. Traced as it is, it would ' +
        'come out the wrong way round.'
      : 'This pattern is not mirrored: trace it at a window or on a light box, prick it, or lay transfer paper between. For what is ' +
        'laid face down and ironed on, make a mirrored one.',
    'Lay the long dashes on the seams of the block. Mark no more than you need: needle points, and of the legs as much as tells you ' +
      'the way. Thread has to cover whatever does not come out again.',
    'Try pen, paper and iron on scraps of your own fabrics first: whether marks show, whether they come out again, and after how long. Heat ' +
      'can set marks for good, those of water-soluble and of fading pens too.',
    'Follow the makers of pen, paper and fabric in how hot and how long to iron. Set the iron down and lift it, without gliding. Velvet, ' +
      'metallic and synthetic fabrics may not bear it: trace or baste through tissue paper there.',
  ];
}
