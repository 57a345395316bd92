import { InputError } from '../input-error.js';

/** A stitch or saved treatment that a seam has in any case. */
export interface PinOption {
  readonly seam: number;
  readonly name: string;
}

/** Parser of pins such as '3=feather'; gathers one after the other. */
export function pinsOption(option: string): (word: string, before?: readonly PinOption[]) => PinOption[] {
  return (word, before = []) => {
    const parts = /^\s*(\d{1,6})\s*=\s*(.*\S)\s*$/.exec(word);
    const seam = Number(parts?.[1]);
    if (parts && seam > 0) return [...before, { seam, name: parts[2] }];
    throw new InputError(
      'bad-pin',
      option,
      `'${word}' is no pin`,
      'give a seam and what it has, such as 3=feather',
    );
  };
}
