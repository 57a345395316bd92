import type { BenchUnit } from '../../core/bench-messages.js';

/** The legs of a unit as thread, later ones over earlier ones; y is -v, mm. */
export function UnitLegs({ unit, chosenLeg }: { unit: BenchUnit; chosenLeg: string | null }) {
  return (
    <>
      {unit.legs.map(({ name, kind, path, size, isEnding }, k) => {
        const is = `leg ${kind}${isEnding ? ' ending' : ''}${chosenLeg === name.replace(/\[.*/, '') ? ' chosen' : ''}`;
        const key = `${name} ${k}`;
        return kind === 'knot' ? (
          <circle key={key} class={is} cx={path[0]} cy={-path[1]} r={size / 2} />
        ) : (
          <polyline
            key={key}
            class={is}
            points={pointsOf(path)}
            style={kind === 'petal' || kind === 'cord' ? { strokeWidth: size } : undefined}
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
