import { useEffect, useRef } from 'preact/hooks';
import { guess, isMeasuring, measured } from '../state/true-size.js';

/** A bank card is so wide and high, mm: ISO/IEC 7810, format ID-1. */
const CARD = [85.6, 53.98] as const;

/** Once for a screen: a card drawn on it is made as large as a card held to it. */
export function ScreenMeasure() {
  const dialog = useRef<HTMLDialogElement>(null);
  const isOpen = isMeasuring.value;
  useEffect(() => {
    if (isOpen && !dialog.current!.open) dialog.current!.showModal();
    else if (!isOpen) dialog.current!.close();
  }, [isOpen]);
  return (
    <dialog
      ref={dialog}
      aria-labelledby="screen-measure"
      onClose={() => {
        isMeasuring.value = false;
      }}
    >
      <h2 id="screen-measure">How large is your screen?</h2>
      <p>Hold a bank card to the screen and make this one as wide. You are asked once only.</p>
      <div
        class="bank-card"
        style={{ width: `${CARD[0] * guess.value}px`, height: `${CARD[1] * guess.value}px` }}
      />
      <label>
        Width of the card
        <input
          type="range"
          min={2}
          max={9}
          step={0.01}
          value={guess.value}
          onInput={({ currentTarget }) => {
            guess.value = Number(currentTarget.value);
          }}
        />
      </label>
      <div class="row">
        <button type="button" onClick={() => dialog.current!.close()}>
          Not now
        </button>
        <button type="button" class="main" onClick={() => measured(guess.value)}>
          They are alike
        </button>
      </div>
    </dialog>
  );
}
