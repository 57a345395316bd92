import { signal } from '@preact/signals';
import type { Complaint } from '../../core/messages.js';

export type { Complaint };

/** What is wrong with files of stitches that were taken in or saved, until the maker has seen it. */
export const complaints = signal<readonly Complaint[]>([]);
