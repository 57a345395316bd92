import type { Finding } from '../../finding.js';
import { lookHere, type Paint } from '../../report/look-here.js';
import { counted } from '../../report/table.js';
import { PAPER_NAMES, type PaperName } from '../page-sizes.js';
import type { Entry, Pattern } from './pattern.js';
import type { PatternOptions } from './pattern-of.js';

/** What a pattern holds, for programs. */
export interface PatternReport {
  readonly pattern: {
    readonly widthMm: number;
    readonly heightMm: number;
    readonly mirrored: boolean;
    /** of the PDF, the one that tells how to use it among them; 0 where none was made */
    readonly pages: number;
    readonly needlePoints: number;
    readonly work: readonly Entry[];
  };
  readonly outputs: readonly string[];
  readonly findings: readonly Finding[];
}

/** Findings that a machine alone gives rise to: its sewing field, its needle's way, its color stops, how often it sews a leg. */
const OF_MACHINE: ReadonlySet<string> = new Set([
  'basting-too-wide',
  'no-common-hoop',
  'hoop-too-small',
  'hand-order',
  'stops-kept-apart',
  'as-heavy-as',
  'not-as-heavy',
]);

/** @param lines that are in the pattern: findings about others are left out; all when not given */
export function patternReport(
  { frame, mirrored, dots, entries }: Pattern,
  pages: number,
  outputs: readonly string[],
  findings: readonly Finding[],
  lines?: PatternOptions['lines'],
): PatternReport {
  const mm = (length: number) => Math.round(10 * length) / 10;
  return {
    pattern: {
      widthMm: mm(frame.right - frame.left),
      heightMm: mm(frame.bottom - frame.top),
      mirrored,
      pages,
      needlePoints: dots.length / 2,
      work: entries,
    },
    outputs,
    findings: findings.filter(({ code, seam }) => {
      const isAway = lines && seam !== undefined && !lines.includes(seam);
      return !isAway && !OF_MACHINE.has(code);
    }),
  };
}

/** The same, for the terminal. */
export function patternText(
  { pattern, outputs, findings }: PatternReport,
  paper: PaperName,
  paint?: Paint,
): string {
  const { widthMm, heightMm, mirrored, pages, needlePoints } = pattern;
  const on = pages
    ? `, on ${counted(pages, 'page')} ${PAPER_NAMES[paper]} with the one that tells how to use it`
    : '';
  return [
    `Pattern of ${widthMm.toFixed(1)} x ${heightMm.toFixed(1)} mm${mirrored ? ', mirrored' : ''}, with ${counted(needlePoints, 'needle point')}${on}. Print it at 100 %.`,
    '',
    lookHere(findings, paint),
    '',
    `Made ${outputs.join(', ')}`,
  ].join('\n');
}
