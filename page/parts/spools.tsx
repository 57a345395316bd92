import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import { work } from '../state/work.js';

interface Spooling {
  readonly title: string;
  /** index of the thread that is in use */
  readonly chosen: number;
  readonly onChoose: (thread: number) => void;
  /** what stands behind the spools */
  readonly children?: ComponentChildren;
}

/** One of the threads that the work has, as spools. */
export function Spools({ title, chosen, onChoose, children }: Spooling) {
  const name = useId();
  return (
    <fieldset class="threads">
      <legend>{title}</legend>
      {(work.value?.dressing.threads ?? []).map((thread, t) => (
        <label key={`${t} ${thread.hex}`} class="spool-choice" title={thread.name}>
          <input type="radio" name={name} checked={t === chosen} onChange={() => onChoose(t)} />
          <span class="spool" style={{ background: thread.hex }} />
          <span class="unseen">{thread.name}</span>
        </label>
      ))}
      {children}
    </fieldset>
  );
}
