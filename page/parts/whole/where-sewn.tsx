import { change } from '../../state/actions.js';
import { picture, work } from '../../state/work.js';
import { Choice } from '../choice.js';

/** After which of its file's stops the new ones are sewn. */
export function WhereSewn() {
  const dressing = work.value?.dressing;
  const existing = picture.value?.block.existing ?? [];
  if (!dressing || existing.length === 0) return null;
  return (
    <Choice
      title="New stops go in"
      value={String(dressing.after ?? '')}
      options={[
        ['', 'behind the seams'],
        ...existing.map(({ stop }) => [String(stop), `after stop ${stop}`] as const),
      ]}
      isOpen={(stop) => !dressing.block.leaveOut?.includes(Number(stop))}
      onChoose={(stop) => change((was) => ({ ...was, after: stop ? Number(stop) : null }))}
    />
  );
}
