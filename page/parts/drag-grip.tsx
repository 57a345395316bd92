interface Dragging {
  readonly title: string;
  readonly place: number;
  readonly onOver: (place: number | null) => void;
  readonly onMove: (to: number) => void;
}

/** What an item of a list is dragged by, with a finger, a mouse or the arrow keys. */
export function DragGrip({ title, place, onOver, onMove }: Dragging) {
  return (
    <button
      type="button"
      class="grip"
      aria-label={`Move ${title}: arrow keys sew it earlier or later`}
      onPointerDown={({ currentTarget, pointerId }) => currentTarget.setPointerCapture(pointerId)}
      onPointerMove={({ currentTarget, pointerId, clientX, clientY }) => {
        if (currentTarget.hasPointerCapture(pointerId)) onOver(placeUnder(clientX, clientY));
      }}
      onPointerUp={({ clientX, clientY }) => {
        onOver(null);
        const to = placeUnder(clientX, clientY);
        if (to !== null) onMove(to);
      }}
      onPointerCancel={() => onOver(null)}
      onKeyDown={(event) => {
        const by = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : 0;
        if (by === 0) return;
        event.preventDefault();
        onMove(place + by);
      }}
    >
      ⠿
    </button>
  );
}

/** The item of the list that lies under a place on the screen. */
function placeUnder(x: number, y: number): number | null {
  const item = document.elementFromPoint(x, y)?.closest('[data-place]');
  return item instanceof HTMLElement ? Number(item.dataset.place) : null;
}
