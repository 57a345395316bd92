import { type Finding, type Level, worstFirst } from '../finding.js';

const mark: Record<Level, string> = { error: 'wrong', warning: 'mind', note: 'note' };

/** Shows the word that tells a finding's level in a look of its own. */
export type Paint = (level: Level, word: string) => string;

/** What is wrong or worth a look, the worst first, a line each, with the place on the block behind it. */
export function lookHere(findings: readonly Finding[], paint: Paint = (_, word) => word): string {
  if (!findings.length) return 'Look here: nothing stands out.';
  const lines = worstFirst(findings).map(
    (finding) => `  ${paint(finding.level, mark[finding.level].padEnd(5))}  ${findingText(finding)}`,
  );
  return ['Look here, the worst first:', ...lines].join('\n');
}

/** A finding by itself: what it is about, what it says, where on the block. */
export const findingText = (finding: Finding): string =>
  `${subject(finding)}${finding.message}${place(finding)}`;

/** The stop and seam that a message is about, as far as it does not name them itself. */
function subject({ seam, stop, message }: Finding): string {
  const parts: string[] = [];
  if (stop !== undefined && !new RegExp(`\\bstop ${stop}\\b`, 'i').test(message)) parts.push(`stop ${stop}`);
  const name = seam === 'outline' ? 'outline' : `seam ${seam}`;
  if (seam !== undefined && !new RegExp(`\\b${name}\\b`, 'i').test(message)) parts.push(name);
  return parts.length ? `${parts.join(', ')}: ` : '';
}

const place = ({ at }: Finding): string =>
  at ? ` (at ${at.map((mm) => Math.round(mm)).join(', ')} mm)` : '';
