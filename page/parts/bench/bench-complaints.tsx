import { complaints } from '../../state/bench/complaints.js';

/** What is wrong with files of stitches: where, what, and what would be right, each on its line. */
export function BenchComplaints() {
  if (complaints.value.length === 0) return null;
  return (
    <div class="complaint" role="alert">
      <ul class="mistakes">
        {complaints.value.map(({ where, wrong, right }) => (
          <li key={`${where} ${wrong}`}>
            <strong>{where}</strong> {wrong}. What would be right: {right}.
          </li>
        ))}
      </ul>
      <button
        type="button"
        onClick={() => {
          complaints.value = [];
        }}
      >
        I see
      </button>
    </div>
  );
}
