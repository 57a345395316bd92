import { bundled } from '../draw/bundles.js';
import { type Pen, shifted, traceLine, traceRing } from '../draw/pen.js';
import { mixed, mutedCloth } from '../draw/shade.js';
import { type Dressed, marksOf } from '../dress.js';
import { stopsOf } from '../formats/stops.js';
import type { Point } from '../geometry/point.js';
import { threadWidth } from '../needle/craft.js';
import type { Runs } from '../needle/run.js';
import { type HoopPlan, shownBox } from './hoop-plan.js';
import type { LineStyle, Page } from './page.js';
import { drawNumbers, SIGN } from './picture-numbers.js';
import type { ThreadMark } from './thread-marks.js';

const THIN: LineStyle = { color: '#000000', width: 0.2 };

export interface PictureLook {
  readonly marks: ReadonlyMap<string, ThreadMark>;
  /** letters of what is put on by hand */
  readonly letters: ReadonlyMap<string, string>;
  /** whether seams get their numbers */
  readonly seams: boolean;
}

/**
 * The block in its hoop: pale cloth, its seams with their numbers, what the block's own stops sew in gray, every new stop
 * in its thread with its number and the pattern of that thread, what is put on by hand, the field with its middle.
 *
 * @param at upper left corner of what is shown, on the page; `scale` is 1 at actual size
 * @returns how many stops have no room for their number
 */
export function drawInHoop(
  page: Page,
  dressed: Dressed,
  plan: HoopPlan,
  at: { readonly x: number; readonly y: number; readonly scale: number },
  { marks, letters, seams }: PictureLook,
): number {
  const box = shownBox(plan);
  const onPage = ([x, y]: Point): Point => [
    at.x + (x - box.left) * at.scale,
    at.y + (y - box.top) * at.scale,
  ];
  const [x, y] = onPage([0, 0]);
  page.placed({ x, y, scale: at.scale }, () => {
    drawCloth(page, dressed);
    drawOwn(page, dressed);
    drawThread(page, dressed);
    drawKept(page, dressed);
  });
  drawField(page, plan, onPage);
  drawMarks(page, dressed, letters, onPage, at.scale);
  const [right, bottom] = onPage([box.right, box.bottom]);
  return drawNumbers(page, dressed, marks, onPage, {
    seams,
    signs: [plan.middle, plan.start].map(onPage),
    within: { left: at.x, top: at.y, right, bottom },
  });
}

/** Cloth so pale that thread stands out from it, and little ink is used. */
const PALE = 0.78;

function drawCloth(page: Page, { block: { map } }: Dressed): void {
  for (const patch of map.patches) {
    page.fill(mixed(patch.fabric ?? mutedCloth(patch.id), '#ffffff', PALE), (pen) => {
      for (const ring of [patch.boundary, ...patch.holes]) traceRing(pen, ring);
    });
  }
  page.stroke({ color: '#777777', width: 0.15 }, (pen) => {
    for (const seam of map.seams) traceLine(pen, seam.points);
  });
  if (map.outline)
    page.stroke({ color: '#444444', width: 0.25 }, (pen) => traceRing(pen, map.outline!.points));
}

function drawOwn(page: Page, { block: { existing, origin } }: Dressed): void {
  if (!existing) return;
  page.stroke({ color: '#9a9a9a', width: 0.2, cap: 'round' }, (pen) => {
    const moved = shifted(pen, -origin[0], -origin[1]);
    for (const { runs } of stopsOf(existing)) for (const run of runs) traceLine(moved, run);
  });
}

/** Thread with a dark edge, so that pale thread shows on paper; what is laid by hand lies under all but its placement. */
function drawThread(page: Page, { design, lines, dressing }: Dressed): void {
  const laid = new Map<Runs, { readonly hex: string; readonly width: number }>();
  for (const { treatment, layers } of lines) {
    const what = dressing.treatments[treatment].laid;
    if (what) for (const { kind, runs } of layers) if (kind === 'placement') laid.set(runs, what);
  }
  for (const [runs, { hex, width }] of laid) {
    page.stroke({ color: '#555555', width }, (pen) => traceRuns(pen, runs));
    page.stroke({ color: mixed(hex, '#ffffff', PALE / 2), width: width - 0.3 }, (pen) =>
      traceRuns(pen, runs),
    );
  }
  for (const stop of design.stops) {
    const runs = bundled(stop.runs);
    const width = threadWidth(stop.thread.weight);
    const edge = { color: mixed(stop.thread.hex, '#000000', 0.72), width, cap: 'round' } as const;
    const core = { color: stop.thread.hex, width: width * 0.55, cap: 'round' } as const;
    for (let r = 0; r + 1 < runs.start.length; r++) {
      const trace = (pen: Pen) => traceLine(pen, runs.xy, runs.start[r], runs.start[r + 1]);
      page.stroke(edge, trace);
      page.stroke(core, trace);
    }
  }
}

function traceRuns(pen: Pen, { xy, start }: Runs): void {
  for (let r = 0; r + 1 < start.length; r++) traceLine(pen, xy, start[r], start[r + 1]);
}

function drawKept(page: Page, { keepClear }: Dressed): void {
  for (const { area } of keepClear) {
    page.stroke({ color: '#444444', width: 0.2, dash: [1.5, 1] }, (pen) => {
      for (const ring of area.rings) traceRing(pen, ring);
    });
  }
}

/** The field as the machine shows it, ticks at the middles of its sides, and which way is up. */
function drawField(page: Page, { field, work, middle, start }: HoopPlan, onPage: (p: Point) => Point): void {
  const { left, top, right, bottom } = field ?? work;
  const [, upper] = onPage([0, Math.min(top, work.top)]);
  const [x1, y1] = onPage([left, top]);
  const [x2, y2] = onPage([right, bottom]);
  if (field) {
    page.box({ x: x1, y: y1, width: x2 - x1, height: y2 - y1 }, { line: { color: '#000000', width: 0.4 } });
    const tick = { ...THIN, width: 0.3 };
    page.line((x1 + x2) / 2, y2, (x1 + x2) / 2, y2 + 2, tick);
    page.line(x1, (y1 + y2) / 2, x1 - 2, (y1 + y2) / 2, tick);
    page.line(x2, (y1 + y2) / 2, x2 + 2, (y1 + y2) / 2, tick);
    const [mx, my] = onPage(middle);
    for (const [ink, width] of [
      ['#ffffff', 0.7],
      ['#000000', 0.25],
    ] as const) {
      page.line(mx - SIGN, my, mx + SIGN, my, { color: ink, width });
      page.line(mx, my - SIGN, mx, my + SIGN, { color: ink, width });
    }
  }
  const x = (x1 + x2) / 2;
  page.fill('#000000', (pen) => {
    pen.move(x, upper - 5);
    pen.line(x + 2.2, upper - 1);
    pen.line(x - 2.2, upper - 1);
    pen.close();
  });
  page.text('TOP', x + 3.2, upper - 1.4, { size: 3, bold: true });
  const [sx, sy] = onPage(start);
  for (const [ink, radius] of [
    ['#ffffff', 1.3],
    ['#000000', 1],
    ['#ffffff', 0.6],
  ] as const)
    page.disc(sx, sy, radius, ink);
}

function drawMarks(
  page: Page,
  dressed: Dressed,
  letters: PictureLook['letters'],
  onPage: (p: Point) => Point,
  scale: number,
): void {
  for (const { what, at, radius } of marksOf(dressed)) {
    const [x, y] = onPage(at);
    const wide = Math.max(0.9, radius * scale);
    page.disc(x, y, wide + 0.2, '#000000');
    page.disc(x, y, wide, '#ffffff');
    const size = Math.min(2.2, wide * 2);
    page.text(letters.get(what) ?? '', x, y + size * 0.36, { size, align: 'center', bold: true });
  }
}
