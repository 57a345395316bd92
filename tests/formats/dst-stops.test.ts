import { describe, expect, it } from 'vitest';
import { readDst } from '../../src/formats/dst-read.js';
import { DstWriter } from '../../src/formats/dst-write.js';
import { stopsOf } from '../../src/formats/stops.js';

describe('the color stops of a stitch file', () => {
  const pen = new DstWriter();
  pen.jump(100, 50);
  pen.jump(20, 0);
  pen.stitch(10, 0);
  pen.stitch(0, -10);
  pen.jump(-5, 5);
  pen.stitch(1, 1);
  pen.change();
  pen.stitch(2, 2);
  pen.change();
  pen.change();
  pen.jump(3, 0);
  const stops = stopsOf(readDst(pen.file('x'), 'x'));

  it('are one more than its color changes, and an empty one counts', () => {
    expect(stops.map((s) => [s.stop, s.firstRecord, s.endRecord, s.stitches, s.jumps])).toEqual([
      [1, 0, 6, 3, 3],
      [2, 7, 8, 1, 0],
      [3, 9, 9, 0, 0],
      [4, 10, 11, 0, 1],
    ]);
    expect(stopsOf(readDst(new DstWriter().file('x'), 'x'))).toHaveLength(1);
  });

  it('hold runs that begin where the jumps ended, in mm from the start of the file, y down', () => {
    expect(stops.map((s) => s.runs.map((run) => [...run]))).toEqual([
      [
        [12, -5, 13, -5, 13, -4],
        [12.5, -4.5, 12.6, -4.6],
      ],
      // the needle has not moved since the stop before, so the run begins at that stop's last hole
      [[12.6, -4.6, 12.8, -4.8]],
      [],
      [],
    ]);
  });
});
