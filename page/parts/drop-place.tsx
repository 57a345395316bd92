import type { ComponentChildren } from 'preact';
import { isOver } from '../state/drop.js';

/** The page as a place on which files can be dropped. */
export function DropPlace({ children }: { children: ComponentChildren }) {
  return (
    <div class={isOver.value ? 'page over' : 'page'}>
      {children}
      {isOver.value && (
        <p class="drop-word" aria-hidden="true">
          Lay it down here
        </p>
      )}
    </div>
  );
}
