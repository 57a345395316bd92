/** What to look at before and while the machine runs, for whoever has only the sheet at hand: as the README says it. */
export const CAUTIONS: readonly string[] = [
  'Sew a swatch or one color stop on scrap of the same cloth and stabilizer first.',
  'Keep hands, hair, sleeves and eyes away from the moving needle; wear glasses when sewing over bulky seams, where a needle may break.',
  'Stop the machine, and take the hoop off or the foot away from the pedal, before you trim threads or cloth in the hoop.',
  'Irons are hot enough to burn, to melt plastic hoops and parts, and to glaze synthetic thread and metallics: press away from the machine, from the back, and let the work cool.',
  'Check that the design fits the sewing field of your hoop before you start, and trace its outline with the needle up.',
  "Follow your machine's own manual and the rules of the place you work in; where they differ from this page, they win.",
];

/** Some machines run through a change of color. */
export const MAY_NOT_HALT =
  'A machine with several needles may not halt at a color change: it goes on with the needle that it was told. Set a halt there wherever this sheet says so, and wherever you change a thread by hand; its manual says how.';

export const OF_THE_BLOCK =
  'What the block’s own stops are for was told by what they sew, and what is done between them is common practice: the block’s own instructions come first.';
