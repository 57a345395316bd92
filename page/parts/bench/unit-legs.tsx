import type { BenchUnit } from '../../core/bench-messages.js';
import { benchThread } from '../../core/bench-threads.js';

/** The legs of a unit as thread, later ones over earlier ones, the chosen one on a halo beneath all; y is -v, mm. */
export function UnitLegs({ unit, chosenLeg }: { unit: BenchUnit; chosenLeg: string | null }) {
  return (
    <>
      {unit.legs
        .filter(({ name }) => name.replace(/\[.*/, '') === chosenLeg)
        .map(({ name, path, size }, k) => (
          <polyline
            key={`halo ${name} ${k}`}
            class="halo"
            points={pointsOf(path)}
            style={{ strokeWidth: Math.max(size, 0.4) + 0.4 }}
          />
        ))}
      {unit.legs.map(({ name, kind, path, size, isEnding, thread }, k) => {
        const is = `leg ${kind}${isEnding ? ' ending' : ''}`;
        const hex = thread > 0 && kind !== 'under' ? benchThread(thread) : undefined;
        const key = `${name} ${k}`;
        return kind === 'knot' ? (
          <circle key={key} class={is} cx={path[0]} cy={-path[1]} r={size / 2} style={{ fill: hex }} />
        ) : (
          <polyline
            key={key}
            class={is}
            points={pointsOf(path)}
            style={{ stroke: hex, strokeWidth: kind === 'petal' || kind === 'cord' ? size : undefined }}
          />
        );
      })}
    </>
  );
}

function pointsOf(path: Float64Array): string {
  const parts: string[] = [];
  for (let i = 0; i < path.length; i += 2) parts.push(`${path[i].toFixed(3)},${(-path[i + 1]).toFixed(3)}`);
  return parts.join(' ');
}
