import type { Pen } from './pen.js';

/** A pen that writes SVG path data, and what it has written. */
export interface SvgPen extends Pen {
  data(): string;
}

/**
 * Path data in relative moves of hundredths of a millimeter. Positions are rounded first and differenced then, so
 * rounding never adds up along a line; a step too short to see is left out.
 */
export function svgPen(): SvgPen {
  let data = '';
  let atX = 0;
  let atY = 0;
  let pending = false;
  return {
    move(x, y) {
      atX = Math.round(x * 100);
      atY = Math.round(y * 100);
      data += `M${atX / 100} ${atY / 100}`;
      pending = true;
    },
    line(x, y) {
      const toX = Math.round(x * 100);
      const toY = Math.round(y * 100);
      if (toX === atX && toY === atY && !pending) return;
      data += `l${(toX - atX) / 100} ${(toY - atY) / 100}`;
      pending = false;
      atX = toX;
      atY = toY;
    },
    close() {
      data += 'z';
    },
    data: () => data,
  };
}

/** Path data of whatever a drawing step does with a pen. */
export function pathData(draw: (pen: Pen) => void): string {
  const pen = svgPen();
  draw(pen);
  return pen.data();
}

/**
 * One open line of two points or more as path data that can be laid down anywhere: its moves are relative, so that only
 * its start has a place.
 */
export interface RelativeLine {
  readonly x: number;
  readonly y: number;
  readonly moves: string;
}

export function relativeLine(draw: (pen: Pen) => void): RelativeLine {
  const data = pathData(draw);
  const first = data.indexOf('l');
  const [x, y] = data.slice(1, first).split(' ').map(Number);
  return { x, y, moves: data.slice(first) };
}

/** Path data of a line laid down aside from its own place. */
export function laidAside({ x, y, moves }: RelativeLine, aside: number): string {
  return `M${Math.round((x + aside) * 100) / 100} ${Math.round((y + aside) * 100) / 100}${moves}`;
}
