import { signal } from '@preact/signals';
import { INCH, type LengthUnit } from '../../src/geometry/units.js';

const KEPT = 'seamwright unit';

export const unit = signal<LengthUnit>(globalThis.localStorage?.getItem(KEPT) === 'inch' ? 'inch' : 'mm');

export function measureIn(chosen: LengthUnit): void {
  unit.value = chosen;
  localStorage.setItem(KEPT, chosen);
}

/** A length for people, in the unit that they measure with. */
export const lengthIn = (mm: number, as: LengthUnit = unit.value): string =>
  as === 'mm' ? `${mm.toFixed(1)} mm` : `${inches(mm)}″`;

/** What is small is told finer, so that it does not become nothing. */
const inches = (mm: number): string => (mm / INCH).toFixed(Math.abs(mm) < FINE ? 3 : 2);
const FINE = 2;

/** A length that is written to the hundredth. */
export const fineLengthIn = (mm: number, as: LengthUnit = unit.value): string =>
  as === 'mm' ? `${mm.toFixed(2)} mm` : `${(mm / INCH).toFixed(3)}″`;

/** Lengths that stand in a sentence in millimeters, in the unit that people measure with. */
export const lengthsIn = (said: string, as: LengthUnit = unit.value): string =>
  as === 'mm'
    ? said
    : said.replace(
        /(\d+(?:\.\d+)?)(?:( to | and | x | × )(\d+(?:\.\d+)?))? mm\b/g,
        (_, first: string, link?: string, second?: string) =>
          second ? `${inches(+first)}${link}${inches(+second)}″` : `${inches(+first)}″`,
      );

/** A field for people: across and down. */
export const fieldIn = (
  { width, height }: { readonly width: number; readonly height: number },
  as: LengthUnit = unit.value,
): string =>
  as === 'mm'
    ? `${round(width, 1)} × ${round(height, 1)} mm`
    : `${round(width / INCH, 2)} × ${round(height / INCH, 2)}″`;

const round = (value: number, digits: number): number => Math.round(value * 10 ** digits) / 10 ** digits;

/** A length as it stands in a field, without its unit. */
export const lengthText = (mm: number, as: LengthUnit = unit.value): string =>
  String(as === 'mm' ? Math.round(100 * mm) / 100 : Math.round((1000 * mm) / INCH) / 1000);

/** The length that was typed into a field, mm; NaN where it is none. */
export const lengthOfText = (text: string, as: LengthUnit = unit.value): number =>
  text.trim() === '' ? Number.NaN : Number(text.replace(',', '.')) * (as === 'mm' ? 1 : INCH);
