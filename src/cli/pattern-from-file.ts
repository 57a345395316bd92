import type { Dressed } from '../dress.js';
import { InputError } from '../input-error.js';
import { PAPERS } from '../sheet/page-sizes.js';
import { mirrored } from '../sheet/pattern/mirrored.js';
import { patternOf } from '../sheet/pattern/pattern-of.js';
import { patternReport, patternText } from '../sheet/pattern/pattern-report.js';
import { dressAsAsked } from './dress-from-file.js';
import { inSaved } from './dress-work.js';
import { fileKind, readInput } from './input-file.js';
import { type Output, writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import type { PatternCommandOptions } from './pattern-command.js';
import { settleStatus } from './print.js';
import type { Terminal } from './terminal.js';

/** Dresses a block or a saved dressing, writes its pattern to work by hand and prints what is on it. */
export async function patternFromFile(
  path: string,
  options: PatternCommandOptions,
  terminal: Terminal,
): Promise<void> {
  const { out = [], mirror, paper = 'a4', seam } = options;
  const outputs = out.map((name) => ({ path: name, ending: outputKind(name, ['.pdf', '.svg']) }));
  if (outputs.length === 0)
    throw new InputError('no-output', '--out', 'is not given', 'name the pattern, such as --out pattern.pdf');
  if (options.paper && outputs.every(({ ending }) => ending !== '.pdf'))
    throw new InputError(
      'no-pages',
      '--paper',
      'is about pages, and none are made',
      'name them, such as --out pattern.pdf',
    );

  // a saved dressing says itself what is dressed: there seams are chosen for the pattern alone
  const isSaved = !options.mix && fileKind(path, await readInput(path)) === 'record';
  const asked = isSaved ? { ...options, seam: undefined } : options;
  const { work, dressed, dictionary } = await dressAsAsked(path, asked, outputs, terminal.progress);
  const lines = seam && [...seam, ...(isSaved ? [] : edgeOf(dressed))];
  const upright = await inSaved(work.saved, () => patternOf(dressed, dictionary, { lines }));
  const pattern = mirror ? mirrored(upright) : upright;
  terminal.progress(0, 0, 'drawing');
  const made: Output[] = [];
  let pages = 0;
  for (const { path: name, ending } of outputs) {
    if (ending === '.svg') {
      const { patternSvg } = await import('../sheet/pattern/pattern-svg.js');
      made.push({ path: name, content: patternSvg(pattern) });
      continue;
    }
    const { patternPdf } = await import('../sheet/pattern/pattern-pdf.js');
    const pdf = await patternPdf(pattern, PAPERS[paper]);
    pages = pdf.pages;
    made.push({ path: name, content: pdf.bytes });
  }
  const report = patternReport(
    pattern,
    pages,
    outputs.map((output) => output.path),
    dressed.findings,
    lines,
  );
  terminal.progress(0, 0, 'writing');
  await writeOutputs(made, () =>
    options.json ? terminal.printJson(report) : terminal.print(patternText(report, paper, terminal.paint)),
  );
  settleStatus(report.findings);
}

/** An edge that was asked for beside single seams. */
const edgeOf = ({ lines }: Dressed): 'outline'[] =>
  lines.some(({ fit }) => fit.seam === 'outline') ? ['outline'] : [];
