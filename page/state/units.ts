import { signal } from '@preact/signals';

export type Unit = 'mm' | 'inch';

const KEPT = 'seamwright unit';
const INCH = 25.4;

export const unit = signal<Unit>(globalThis.localStorage?.getItem(KEPT) === 'inch' ? 'inch' : 'mm');

export function measureIn(chosen: Unit): void {
  unit.value = chosen;
  localStorage.setItem(KEPT, chosen);
}

/** A length for people, in the unit that they measure with. */
export const lengthIn = (mm: number, as: Unit = unit.value): string =>
  as === 'mm' ? `${mm.toFixed(1)} mm` : `${(mm / INCH).toFixed(2)}″`;
