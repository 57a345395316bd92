import { signal } from '@preact/signals';

export type Unit = 'mm' | 'inch';
export const unit = signal<Unit>('mm');
const INCH = 25.4;

/** A length for people, in the unit that they measure with. */
export const lengthIn = (mm: number, as: Unit = unit.value): string =>
  as === 'mm' ? `${mm.toFixed(1)} mm` : `${(mm / INCH).toFixed(2)}″`;
