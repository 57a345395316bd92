import { type Guide, STEEPEST_GUIDE } from '../formats/dressing.js';
import { InputError } from '../input-error.js';

/** A gentle wave that most stitches can follow, mm. Common practice. */
export const GUIDE_HEIGHT = 5;
export const GUIDE_LENGTH = 24;

export interface GuideOptions {
  readonly guide?: Guide['shape'];
  readonly guideHeight?: number;
  readonly guideLength?: number;
}

/** @throws InputError when a height or length is given for no guide line, or one that no thread could follow */
export function guideAsked({ guide, guideHeight, guideLength }: GuideOptions): Guide | undefined {
  if (guide === undefined) {
    for (const [option, value] of [
      ['--guide-height', guideHeight],
      ['--guide-length', guideLength],
    ] as const) {
      if (value === undefined) continue;
      throw new InputError(
        'no-guide',
        option,
        'there is no guide line to give it to',
        'name one with --guide',
      );
    }
    return undefined;
  }
  const length = guideLength ?? GUIDE_LENGTH;
  const height = guideHeight ?? Math.min(GUIDE_HEIGHT, length / 4);
  const most = STEEPEST_GUIDE * length;
  if (height > most) {
    throw new InputError(
      'guide-too-steep',
      `--guide-height ${height}`,
      'no thread could follow so steep a line',
      `with --guide-length ${length} it takes up to ${most} mm`,
    );
  }
  return { shape: guide, height, length };
}
