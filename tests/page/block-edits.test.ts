import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  isAligned,
  withAligned,
  withHoop,
  withHooping,
  withLeftOut,
  withScale,
  withStopKeptClear,
  withTurn,
} from '../../page/state/block-edits.js';
import { withFigureTold } from '../../page/state/standing.js';
import { fieldIn } from '../../page/state/units.js';
import { readDressing } from '../../src/formats/dressing-file.js';
import { writeDressing } from '../../src/formats/dressing-text.js';
import { dressingOf } from '../asked/dressed-line.js';

const plain = dressingOf();

describe('the block as a whole', () => {
  it('turned by any angles, one after the other, is turned by their sum within half a turn', () => {
    const angle = fc.integer({ min: -360, max: 360 });
    fc.assert(
      fc.property(fc.array(angle, { maxLength: 8 }), (angles) => {
        const turned = angles.reduce((was, by) => withTurn(was, (was.block.turn ?? 0) + by), plain);
        const turn = turned.block.turn ?? 0;
        const sum = angles.reduce((a, b) => a + b, 0);
        expect(turn > -180 && turn <= 180 && (turn - sum) % 360 === 0).toBe(true);
      }),
    );
  });

  it('cannot be as large as a hoop that is not named any more', () => {
    const toHoop = withScale(withHoop(plain, { width: 130, height: 180 }), 'hoop');
    expect(toHoop.block.scale).toBe('hoop');
    expect(withHoop(toHoop, null).block.scale).toBeUndefined();
  });

  it('as drawn is told as nothing', () => {
    expect(withScale(withScale(plain, 2), 1)).toEqual(plain);
    expect(withLeftOut(withLeftOut(plain, 3, true), 3, false)).toEqual(plain);
    expect(withHooping(withHooping(plain, { basting: 9 }), { basting: undefined })).toEqual(plain);
    expect(
      withAligned(withHooping(withAligned(plain, [1, 2], true), { crosses: true }), [1, 2], false),
    ).toEqual(plain);
  });

  it('has its places to look at and its stops kept clear once each', () => {
    const one = withAligned(withAligned(plain, [1, 2], true), [1, 2], true);
    expect(one.hooping!.align).toEqual([[1, 2]]);
    expect(isAligned(one, [1, 2])).toBe(true);
    const clear = withStopKeptClear(withStopKeptClear(plain, 7, true), 7, true);
    expect(clear.keepClear).toEqual([{ name: 'stop 7', stops: [7] }]);
    expect(withStopKeptClear(clear, 7, false).keepClear).toEqual([]);
  });

  it('is read again as it was written, however it was changed', async () => {
    const changed = withHooping(withTurn(withScale(withHoop(plain, { width: 5, height: 6 }), 'hoop'), 400), {
      outline: true,
    });
    expect(await readDressing(writeDressing(changed), 'block.dressing.json')).toEqual(
      JSON.parse(JSON.stringify(changed)),
    );
  });
});

describe('a figure', () => {
  it('is turned and gets another thread, stays where it is, and stays when the rest is mixed again', () => {
    const at = [40, 90] as const;
    const ornaments = [{ ornament: 'daisy', at, parameters: { size: 9 }, thread: 0 }];
    const told = withFigureTold({ ...plain, ornaments }, 0, { turn: 45, thread: 1 });
    expect(told.ornaments).toEqual([{ ...ornaments[0], turn: 45, thread: 1, pinned: true }]);
  });
});

describe('a sewing field', () => {
  it('is told in the unit that the maker measures with', () => {
    expect(fieldIn({ width: 130, height: 180 }, 'mm')).toBe('130 × 180 mm');
    expect(fieldIn({ width: 127, height: 177.8 }, 'inch')).toBe('5 × 7″');
  });
});
