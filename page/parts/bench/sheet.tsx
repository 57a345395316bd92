import { useEffect, useRef, useState } from 'preact/hooks';
import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { chosenLeg } from '../../state/bench/chosen-leg.js';
import { dragged } from '../../state/bench/drag.js';
import { type Handle, handlesOf } from '../../state/bench/handles.js';
import { benched, changeStitch, chosen, draft, releaseStitch } from '../../state/bench/on-bench.js';
import { bendsOf } from '../../state/bench/points.js';
import {
  COARSE,
  FINE,
  nearestSpot,
  neighborsOn,
  onTenths,
  type Sheet as Size,
  sheetFor,
} from '../../state/bench/sheet.js';
import type { Spot } from '../../state/bench/ties.js';
import { legFrom, tool, touchSheet } from '../../state/bench/tool.js';
import { lengthIn } from '../../state/units.js';
import { told } from '../../state/work.js';
import { HandleMark } from './handle-mark.js';
import { SheetGrid } from './sheet-grid.js';
import { Tethers } from './tethers.js';
import { UnitLegs } from './unit-legs.js';

/** A finger takes what lies within this, px. */
const TOUCH = 24;

interface Drag {
  readonly handle: Handle;
  readonly record: StitchRecord;
  readonly spots: readonly Spot[];
  /** where it was taken, mm */
  readonly u: number;
  readonly v: number;
  readonly size: Size;
}

/** One unit of the stitch on a sheet of millimeters, its neighbors faint beside it; points and loops are dragged. */
export function Sheet() {
  const svg = useRef<SVGSVGElement>(null);
  const drag = useRef<Drag | null>(null);
  const [room, setRoom] = useState({ scale: 20, aspect: 2 });
  const { scale, aspect } = room;
  const { unit } = benched.value ?? {};
  const size =
    drag.current?.size ?? (unit ? sheetFor(unit, aspect) : { left: -4, top: -8, width: 16, height: 16 });
  useEffect(() => {
    const measure = () => {
      const { clientWidth = 0, clientHeight = 0 } = svg.current ?? {};
      if (clientHeight === 0) return;
      const { a } = svg.current!.getScreenCTM()!;
      setRoom((was) =>
        was.scale === a && was.aspect === clientWidth / clientHeight
          ? was
          : { scale: a, aspect: clientWidth / clientHeight },
      );
    };
    const watch = new ResizeObserver(measure);
    watch.observe(svg.current!);
    measure();
    return () => watch.disconnect();
  }, [size.width, size.height]);
  const record = draft.value?.record;
  const handles = unit ? handlesOf(unit) : [];
  const bends = record ? bendsOf(record) : new Set<string>();

  const place = ({ clientX, clientY }: PointerEvent): [number, number] => {
    const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(svg.current!.getScreenCTM()!.inverse());
    return [x, -y];
  };
  const take = (event: PointerEvent) => {
    if (!unit || !record) return;
    const [u, v] = place(event);
    const reach = TOUCH / scale;
    if (tool.value !== 'choose') {
      const spot = nearestSpot(unit.spots, u, v, reach);
      return touchSheet(spot?.name ?? null, spot?.u ?? onTenths(u), spot?.v ?? onTenths(v));
    }
    // what is chosen already is dragged even where others lie as near
    const near = nearestSpot(handles, u, v, reach);
    const own = handles.find(({ name }) => name === chosen.value);
    const handle = own && near && nearestSpot([own], u, v, reach / 2) ? own : near;
    chosen.value = handle?.name ?? null;
    if (!handle) return;
    event.preventDefault();
    svg.current!.setPointerCapture(event.pointerId);
    drag.current = { handle, record, spots: unit.spots, u, v, size };
  };
  const pull = (event: PointerEvent) => {
    const now = drag.current;
    if (!now) return;
    const [u, v] = place(event);
    const { handle } = now;
    const du = onTenths(handle.u + u - now.u) - handle.u;
    const dv = onTenths(handle.v + v - now.v) - handle.v;
    if (Math.abs(u - now.u) + Math.abs(v - now.v) < 3 / scale && draft.value?.record === now.record) return;
    changeStitch(() => dragged(now.record, now.spots, handle, du, dv), `drag ${handle.name}`);
  };
  const letGo = () => {
    drag.current = null;
    releaseStitch();
    // the sheet was held still meanwhile
    setRoom((was) => ({ ...was }));
  };
  const nudge = (handle: Handle, event: KeyboardEvent) => {
    const step = event.shiftKey ? FINE : COARSE;
    const by = ARROWS[event.key];
    if (event.key === 'Enter' || event.key === ' ') touchSheet(handle.name, handle.u, handle.v);
    else if (by && unit) {
      const [du, dv] = [by[0] * step, by[1] * step];
      changeStitch((now) => dragged(now, unit.spots, handle, du, dv));
      told.value = `${handle.name} by ${lengthIn(step)} ${by[2]}`;
    } else return;
    event.preventDefault();
  };

  return (
    <svg
      ref={svg}
      class={`sheet ${tool.value === 'choose' ? '' : 'laying'}`}
      viewBox={`${size.left} ${size.top} ${size.width} ${size.height}`}
      role="application"
      aria-label="One repeat on a grid of millimeters. Tab goes from point to point, arrow keys move them."
      onPointerDown={take}
      onPointerMove={pull}
      onPointerUp={letGo}
      onPointerCancel={letGo}
    >
      <SheetGrid size={size} length={unit?.length ?? 8} scale={scale} isHalf={record?.symmetry === 'glide'} />
      {unit && (
        <>
          {neighborsOn(size, unit.length).map((side) => (
            <g
              key={side}
              class="neighbor"
              transform={`translate(${side * unit.length} 0)${record?.symmetry === 'glide' && side % 2 !== 0 ? ' scale(1 -1)' : ''}`}
            >
              <UnitLegs unit={unit} chosenLeg={null} />
            </g>
          ))}
          <UnitLegs unit={unit} chosenLeg={chosenLeg.value} />
          {record && <Tethers record={record} spots={unit.spots} />}
          {handles.map((handle) => (
            <HandleMark
              key={handle.name}
              handle={handle}
              isBend={bends.has(handle.name.replace(/\[.*/, ''))}
              isChosen={chosen.value === handle.name || legFrom.value?.name === handle.name}
              scale={scale}
              onKeyDown={(event) => nudge(handle, event)}
            />
          ))}
        </>
      )}
    </svg>
  );
}

const ARROWS: Record<string, readonly [number, number, string]> = {
  ArrowRight: [1, 0, 'on along the seam'],
  ArrowLeft: [-1, 0, 'back along the seam'],
  ArrowUp: [0, 1, 'up'],
  ArrowDown: [0, -1, 'down'],
};
