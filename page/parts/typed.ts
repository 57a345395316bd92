import type { TargetedEvent } from 'preact';
import { useState } from 'preact/hooks';

type Field = HTMLInputElement | HTMLTextAreaElement;

/** For a field to type in: what is half typed stays when the page shows anew what is around it. It is told once, when it
 * has been typed; what is not taken shows as it was. */
export function useTyped(value: string, onTyped: (text: string) => void) {
  const [typed, type] = useState<string | null>(null);
  return {
    value: typed ?? value,
    onInput: ({ currentTarget }: TargetedEvent<Field>) => type(currentTarget.value),
    onChange: ({ currentTarget }: TargetedEvent<Field>) => {
      type(null);
      onTyped(currentTarget.value);
    },
  };
}
