import { complaint } from '../state/work.js';

/** What could not be used: where, what is wrong, what would be right. */
export function Complaint() {
  const said = complaint.value;
  if (!said) return null;
  return (
    <div class="complaint" role="alert">
      <p>
        <strong>{said.where}</strong> {said.wrong}.
      </p>
      <p>What would help: {said.right}.</p>
      <button
        type="button"
        onClick={() => {
          complaint.value = null;
        }}
      >
        I see
      </button>
    </div>
  );
}
