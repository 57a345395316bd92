import { signal } from '@preact/signals';

/** The leg that is looked at in the list, by its name: it stands out on the sheet. */
export const chosenLeg = signal<string | null>(null);
