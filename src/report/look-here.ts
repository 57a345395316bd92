import { type Finding, type Level, worstFirst } from '../finding.js';

const mark: Record<Level, string> = { error: 'wrong', warning: 'mind', note: 'note' };

/** What is wrong or worth a look, the worst first, a line each; alike findings of many seams stand together. */
export function lookHere(findings: readonly Finding[]): string {
  if (!findings.length) return 'Look here: nothing stands out.';
  const lines = worstFirst(findings).map(
    (finding) => `  ${mark[finding.level].padEnd(5)}  ${place(finding)}${finding.message}`,
  );
  return ['Look here, the worst first:', ...lines].join('\n');
}

function place({ seam, stop, at, message }: Finding): string {
  const parts: string[] = [];
  if (stop !== undefined && !/\bstop \d/i.test(message)) parts.push(`stop ${stop}`);
  if (seam !== undefined && !new RegExp(`\\b(seam ${seam}|${seam})\\b`, 'i').test(message)) {
    parts.push(seam === 'outline' ? 'outline' : `seam ${seam}`);
  }
  if (at !== undefined) parts.push(`at ${at.map((value) => Math.round(value)).join(', ')} mm`);
  return parts.length ? `${parts.join(', ')}: ` : '';
}
