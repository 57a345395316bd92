interface Steps {
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly undo: () => void;
  readonly redo: () => void;
}

/** One step back and one forth. */
export function BackAndForth({ canUndo, canRedo, undo, redo }: Steps) {
  return (
    <div class="pair">
      <button type="button" onClick={undo} disabled={!canUndo}>
        Undo
      </button>
      <button type="button" onClick={redo} disabled={!canRedo}>
        Redo
      </button>
    </div>
  );
}
