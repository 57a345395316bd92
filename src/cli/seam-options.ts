import type { SeamMeeting } from '../block/wishes-by-number.js';
import { InputError } from '../input-error.js';
import type { Setting } from '../settings.js';
import { listOption } from './numbers.js';

/** Parser of seams where they meet others, such as '4@3,7@2'. */
export function meetingsOption(option: string): (word: string) => SeamMeeting[] {
  return (word) =>
    word.split(',').map((part) => {
      const [seam, meets] = /^\s*(\d{1,6})\s*@\s*(\d{1,6})\s*$/.exec(part)?.slice(1).map(Number) ?? [];
      if (seam > 0 && meets > 0) return { seam, meets };
      throw new InputError(
        'bad-meeting',
        option,
        `'${part}' names no two seams`,
        'give a seam and one that it meets, such as 4@3',
      );
    });
}

/** Parser of what is said of single seams, such as '4:side=left' or '5-7:ends=short'; gathers one after the other. */
export function settingsOption(option: string): (word: string, before?: readonly Setting[]) => Setting[] {
  const list = listOption(option);
  return (word, before = []) => {
    const [seams, what, value] =
      /^\s*([\d,\s-]+|edge)\s*:\s*([a-z][A-Za-z0-9]*)\s*=\s*(.*\S)\s*$/.exec(word)?.slice(1) ?? [];
    if (value === undefined) {
      throw new InputError(
        'bad-setting',
        option,
        `'${word}' sets nothing`,
        'give seams, what to set and how, such as 4:side=left',
      );
    }
    const lines = seams === 'edge' ? (['outline'] as const) : list(seams);
    return [...before, ...lines.map((line) => ({ line, what, value }))];
  };
}

/** Parser of seams in an order of their own, such as '4,2,edge'. */
export function orderOption(option: string): (word: string) => (number | 'outline')[] {
  return (word) =>
    word.split(',').map((part) => {
      const name = part.trim();
      if (name === 'edge') return 'outline';
      if (/^[1-9]\d{0,5}$/.test(name)) return Number(name);
      throw new InputError(
        'bad-order',
        option,
        `'${part}' is no seam`,
        'give seams in the order they are to be sewn, such as 4,2,edge',
      );
    });
}
