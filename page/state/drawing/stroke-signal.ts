import { signal } from '@preact/signals';
import type { Point } from '../../../src/geometry/point.js';

/** Where the hand has gone since it was set down, mm. */
export const stroke = signal<readonly Point[]>([]);
