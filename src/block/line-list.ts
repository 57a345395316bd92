import type { LineId } from './meetings.js';

/** Lines in a sentence: 'seam 4', 'seams 1, 4-6 and the outline'. */
export function lineList(lines: readonly LineId[]): string {
  const numbers = lines.filter((line) => line !== 'outline');
  const seams = numbers.length ? [`seam${numbers.length > 1 ? 's' : ''} ${numberRanges(numbers)}`] : [];
  return [...seams, ...(lines.includes('outline') ? ['the outline'] : [])].join(' and ');
}

/** Numbers as a person writes them: '1, 4-6'. */
export function numberRanges(list: readonly number[]): string {
  const numbers = [...new Set(list)].sort((a, b) => a - b);
  const parts: string[] = [];
  for (let i = 0; i < numbers.length; ) {
    let j = i;
    while (numbers[j + 1] === numbers[j] + 1) j++;
    parts.push(j - i < 2 ? numbers.slice(i, j + 1).join(', ') : `${numbers[i]}-${numbers[j]}`);
    i = j + 1;
  }
  return parts.join(', ');
}
