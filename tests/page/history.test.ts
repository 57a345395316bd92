import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { begun, changed, letGo, redone, undone } from '../../page/state/history.js';

describe('undo and redo', () => {
  it('go back to the beginning and on to the end, however long the way was', () => {
    fc.assert(
      fc.property(fc.array(fc.integer(), { maxLength: 200 }), (steps) => {
        const end = steps.reduce((history, step) => changed(history, step), begun<number>(-1));
        const back = end.past.reduce((history) => undone(history), end);
        expect(back.now).toBe(-1);
        const on = back.future.reduce((history) => redone(history), back);
        expect([on.now, on.past]).toEqual([end.now, end.past]);
      }),
    );
  });

  it('take what was dragged as one step, and the next drag as another', () => {
    const dragged = [2, 3, 4].reduce((history, size) => changed(history, size, 'width'), begun(1));
    expect(undone(dragged).now).toBe(1);
    const again = changed(letGo(dragged), 9, 'width');
    expect(undone(again).now).toBe(4);
  });

  it('forget what was undone once something else is done', () => {
    const other = changed(undone(changed(begun('plain'), 'feather')), 'fly');
    expect(redone(other)).toBe(other);
  });

  it('stay where they are at either end', () => {
    expect(undone(begun('plain')).now).toBe('plain');
    expect(redone(begun('plain')).now).toBe('plain');
  });
});
