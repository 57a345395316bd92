import { useRef } from 'preact/hooks';
import { pointInside } from '../../src/geometry/area.js';
import { type Placement, placedPoint } from '../../src/geometry/placement.js';
import { fromPoints } from '../../src/geometry/polyline.js';
import { change } from '../state/actions.js';
import { withCornerAt, withCornerBehind, withoutCorner, withShapeMoved } from '../state/clear-shapes.js';
import { withoutClearPlace } from '../state/standing.js';
import { PlaceHandle } from './place-handle.js';

interface Shape {
  readonly k: number;
  readonly name: string;
  readonly polygon: readonly (readonly [number, number])[];
  readonly placement: Placement;
}

/** A place that is kept clear and has corners: it is dragged by its middle, its corners, and where another is to be. */
export function ClearShapeHandles({ k, name, polygon, placement }: Shape) {
  const corners = polygon.map((at) => placedPoint([...at], placement) as [number, number]);
  const middle = pointInside([fromPoints([...corners, corners[0]])]) ?? corners[0];
  return (
    <>
      {corners.map((at, i) => {
        const next = corners[(i + 1) % corners.length];
        const between: [number, number] = [(at[0] + next[0]) / 2, (at[1] + next[1]) / 2];
        return <NewCorner key={`side ${i}`} {...{ k, name, placement }} behind={i} at={between} />;
      })}
      {corners.map((at, i) => (
        <PlaceHandle
          key={`corner ${i}`}
          id={idOf(k, i)}
          kind="corner"
          label={`${name}, corner ${i + 1}`}
          at={at}
          onMove={(to) => change((was) => withCornerAt(was, k, i, to, placement), `clear ${k} corner ${i}`)}
          onRemove={() => change((was) => withoutCorner(was, k, i))}
        />
      ))}
      <PlaceHandle
        label={name}
        at={middle as [number, number]}
        onMove={(to, from) => change((was) => withShapeMoved(was, k, from, to, placement), `clear ${k}`)}
        onRemove={() => change((was) => withoutClearPlace(was, k))}
      />
    </>
  );
}

interface Between extends Omit<Shape, 'polygon'> {
  readonly behind: number;
  readonly at: readonly [number, number];
}

/** Where another corner can be dragged out of a side; by keys the new corner is gone on with. */
function NewCorner({ k, name, placement, behind, at }: Between) {
  const isThere = useRef(false);
  return (
    <PlaceHandle
      kind="between"
      label={`${name}, a corner behind corner ${behind + 1}`}
      at={at}
      onMove={(to, _, byKey) => {
        const grip = `clear ${k} new ${behind}`;
        if (isThere.current) change((was) => withCornerAt(was, k, behind + 1, to, placement), grip);
        else change((was) => withCornerBehind(was, k, behind, to, placement), grip);
        isThere.current = !byKey;
        if (byKey) requestAnimationFrame(() => document.getElementById(idOf(k, behind + 1))?.focus());
      }}
      onDrop={() => {
        isThere.current = false;
      }}
    />
  );
}

const idOf = (k: number, corner: number): string => `clear-${k}-corner-${corner}`;
