import { KINDS } from '../../state/bench/legs.js';
import { benched } from '../../state/bench/on-bench.js';
import { COARSE, FINE } from '../../state/bench/sheet.js';
import { legFrom, type Tool, takeTool, tool, touchSheet } from '../../state/bench/tool.js';
import { lengthIn } from '../../state/units.js';

const TOOLS: readonly (readonly [Tool, string])[] = [
  ['choose', 'Drag'],
  ['point', 'Point'],
  ...KINDS.map(
    ([kind, title]) => [kind, kind === 'under' ? 'Behind' : title[0].toUpperCase() + title.slice(1)] as const,
  ),
];

/** What a touch on the sheet does. */
export function Tools() {
  const { unit } = benched.value ?? {};
  return (
    <div class="bench-tools" role="toolbar" aria-label="What a touch on the sheet does">
      {TOOLS.map(([one, title]) => (
        <button key={one} type="button" aria-pressed={tool.value === one} onClick={() => takeTool(one)}>
          {title}
        </button>
      ))}
      {tool.value === 'point' && unit && (
        <button type="button" class="quiet" onClick={() => touchSheet(null, unit.length / 2, 0)}>
          in the middle
        </button>
      )}
      <p class="hint">{hint()}</p>
    </div>
  );
}

function hint(): string {
  if (tool.value === 'choose')
    return `Drag a point. Arrow keys move it by ${lengthIn(COARSE)}, with Shift by ${lengthIn(FINE)}.`;
  if (tool.value === 'point') return 'Touch where the needle shall go down.';
  if (tool.value === 'knot') return 'Touch where the knot sits.';
  return legFrom.value
    ? 'Touch where it ends.'
    : 'Touch where it begins: a point, or bare cloth for a new one.';
}
