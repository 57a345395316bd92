import { StopsList } from './stops-list.js';

/** The block as a whole. */
export function BlockPanel() {
  return (
    <>
      <p class="hint">Touch a seam to choose its stitch.</p>
      <StopsList />
    </>
  );
}
