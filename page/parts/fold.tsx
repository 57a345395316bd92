import type { ComponentChildren } from 'preact';

interface Folding {
  readonly title: string;
  /** what is so now, told while it is folded */
  readonly now?: string;
  readonly onToggle?: (isOpen: boolean) => void;
  readonly children: ComponentChildren;
}

/** Something that is looked at when it is wanted: its title, what it is now, and all else folded away. */
export function Fold({ title, now, onToggle, children }: Folding) {
  return (
    <details class="leaf" onToggle={({ currentTarget }) => onToggle?.(currentTarget.open)}>
      <summary>
        <span class="leaf-title">{title}</span>
        {now && <span class="leaf-now">{now}</span>}
      </summary>
      <div class="leaf-body">{children}</div>
    </details>
  );
}
