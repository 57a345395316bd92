/**
 * Everything inside is millimeters and radians as plain numbers; x right, y down. The two foreign units are types of
 * their own, so that neither passes for the other: machine steps (0.1 mm, y up) and degrees (files that people edit).
 */
declare const unit: unique symbol;
export type Steps = number & { readonly [unit]: 'step of 0.1 mm' };
export type Degrees = number & { readonly [unit]: 'degree' };

export const STEPS_PER_MM = 10;
/** What a maker measures with, and the one in the other, mm. */
export type LengthUnit = 'mm' | 'inch';
export const INCH = 25.4;
/** CSS pixels in a millimeter: 96 to the inch (CSS Values and Units, "absolute lengths"). */
export const PX_PER_MM = 96 / INCH;

export const toSteps = (mm: number): Steps => Math.round(mm * STEPS_PER_MM) as Steps;
export const fromSteps = (steps: Steps): number => steps / STEPS_PER_MM;
export const degrees = (radians: number): Degrees => ((radians * 180) / Math.PI) as Degrees;
export const radians = (angle: Degrees): number => (angle * Math.PI) / 180;
