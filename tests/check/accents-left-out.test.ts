import { describe, expect, test } from 'vitest';
import { accentsLeftOut } from '../../src/check/accents-left-out.js';
import { dress } from '../../src/dress.js';
import type { LeftOut, SeamFit } from '../../src/fit/fit.js';
import type { Accent } from '../../src/formats/dressing.js';
import { defaultDressing, USUAL_THREADS } from '../../src/plan.js';
import { butting } from '../fit/block-of-lines.js';
import { builtIn } from '../stitches/dictionary.js';

const left = (why: LeftOut['why'], other?: number): LeftOut => ({ at: [10, 20], why, other });
const told = (accents: SeamFit['accents'], ...names: string[]) =>
  accentsLeftOut({ seam: 4, accents } as SeamFit, names);

describe('accents that are left out', () => {
  test('are told of once a seam, with how many of how many and each reason once', () => {
    const leftOut = [left('past-end'), left('on-thread', 7), left('past-end'), left('crowded')];
    const found = told(
      [
        { asked: 17, leftOut },
        { asked: 9, leftOut: [] },
        { asked: 5, leftOut: [left('crowded')] },
      ],
      'french knot',
      'daisy',
      'bead',
    );
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ level: 'note', code: 'accents-left-out', seam: 4, at: [10, 20] });
    expect(found[0].message).toContain(
      'seam 4: 4 of 17 accents (french knot) are left out: 2 would reach past an end of it, ' +
        '1 would lie on the thread of seam 7, 1 would crowd the next; 1 of 5 accents (bead) is left out: 1 would crowd',
    );
    expect(found[0].message).not.toContain('daisy');
  });

  test('are no finding where all stand, and a warning where none does', () => {
    expect(told([{ asked: 3, leftOut: [] }], 'bead')).toEqual([]);
    const [none] = told([{ asked: 1, leftOut: [left('crowded')] }], 'bead');
    expect(none.level).toBe('warning');
  });

  test('are told of on a block: daisies at a tucked end, as many as their stops are short of the seats', () => {
    const map = butting(0.9);
    const block = { name: 'T', map, existing: null, stops: [], origin: [0, 0], findings: [] } as const;
    const source = { file: 'block.svg', stops: null, snap: 0.3, through: [] };
    const plain = defaultDressing(map, { source, dictionary: builtIn, stitch: 'feather' });
    const daisies: Accent = {
      row: 0,
      seat: 'tip',
      ornament: 'daisy-petal',
      parameters: {},
      thread: 1,
      passes: 2,
    };
    const threads = USUAL_THREADS;
    const treatments = plain.treatments.map((one) => ({ ...one, accents: [daisies] }));
    const { lines, findings } = dress(block, { ...plain, threads, treatments }, builtIn);
    const short = lines.filter(({ fit }) => fit.accents[0].leftOut.length > 0).map(({ fit }) => fit);
    expect(short.length).toBeGreaterThan(0);
    const said = findings.filter(({ code }) => code === 'accents-left-out');
    expect(said.map(({ seam }) => seam).sort()).toEqual(short.map(({ seam }) => seam).sort());
    for (const { seam, accents, layers } of short) {
      const figures = layers.filter(({ kind }) => kind === 'accent').flatMap(({ chains }) => chains).length;
      const [{ asked }] = accents;
      expect(said.find((one) => one.seam === seam)!.message).toContain(
        `${asked - figures} of ${asked} accents`,
      );
    }
  });
});
