import type { SavedTreatment } from '../../src/formats/treatment.js';
import type { Figure } from '../../src/stitches/stitch.js';
import { builtIn } from '../stitches/dictionary.js';

/** The gallery's page: every stitch by its family, then ornaments and treatments, with names and parameters. */
export function index(): string {
  const stitches = byFamily([...builtIn.stitches.values()]);
  const ornaments = byFamily([...builtIn.ornaments.values()]);
  const treatments = [...builtIn.treatments.values()];
  return `# Gallery

Drawn by \`npm run gallery\`. ${builtIn.stitches.size} stitches, ${builtIn.ornaments.size} ornaments, ${treatments.length} treatments.

Each sheet of a stitch or treatment shows it on a straight seam and a gentle curve; on a tight curve, round a corner and as a
ring; at its smallest good size, its usual and a large one; and light, medium and heavy in thread. Thread lies at its true
width, worked as unevenly as a third of a practiced hand's measure.

![The demo panel, dressed](demo/panel.png)

${[...stitches].map(([family, all]) => `- ${capital(family)}: ${all.map(link).join(', ')}`).join('\n')}
- Ornaments: ${[...ornaments.values()].flat().map(link).join(', ')}
- Treatments: ${treatments.map(link).join(', ')}

${[...stitches].map(([family, all]) => `## ${capital(family)}\n\n${all.map((one) => figureEntry('stitches', one)).join('\n')}`).join('\n')}
## Ornaments

${[...ornaments.values()]
  .flat()
  .map((one) => figureEntry('ornaments', one))
  .join('\n')}
## Treatments

${treatments.map(treatmentEntry).join('\n')}`;
}

function byFamily<F extends Figure>(figures: readonly F[]): Map<string, F[]> {
  const families = new Map<string, F[]>();
  for (const figure of figures) families.set(figure.family, [...(families.get(figure.family) ?? []), figure]);
  return new Map([...families].sort(([a], [b]) => (a < b ? -1 : 1)));
}

const capital = (word: string): string => word[0].toUpperCase() + word.slice(1);
const anchor = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^a-z0-9 -]/g, '')
    .replaceAll(' ', '-');
const link = ({ title }: { readonly title: string }): string => `[${title}](#${anchor(title)})`;
const also = (names: readonly string[]): string => (names.length ? ` Also called ${names.join(', ')}.` : '');

function figureEntry(shelf: string, { name, title, use, otherNames, parameters, threads }: Figure): string {
  const unit = { mm: ' mm', degree: '°', count: '', share: '' };
  const sizes = parameters.map(
    (one) => `\`${one.name}\` ${one.default}${unit[one.unit]} (${one.min} to ${one.max})`,
  );
  const several = threads.length > 1 ? ` Threads: ${threads.join(', ')}.` : '';
  return `### ${title}

${use}${also(otherNames)}${several}

${sizes.join(', ')}

![${title}](${shelf}/${name}.png)
`;
}

function treatmentEntry({
  name,
  title,
  use,
  otherNames,
  rows,
  accents = [],
  threads,
}: SavedTreatment): string {
  const worked = [
    ...rows.map(({ stitch }) => builtIn.stitches.get(stitch)!.title),
    ...accents.map(({ ornament, byHand }) =>
      ornament ? builtIn.ornaments.get(ornament)!.title : `${byHand} by hand`,
    ),
  ];
  return `### ${title}

${use}${also(otherNames)}

${worked.join(', ')}; in ${threads.map((thread) => thread.name.toLowerCase()).join(', ')}.

![${title}](treatments/${name}.png)
`;
}
