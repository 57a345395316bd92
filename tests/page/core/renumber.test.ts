import { describe, expect, it } from 'vitest';
import { bareBlock, redraw } from '../../../page/core/drawing.js';
import { meetingsOf, withoutWishes } from '../../../page/core/meetings.js';
import type { MeetingPlace } from '../../../page/core/messages.js';
import { readBlock } from '../../../page/core/read-block.js';
import { numberedOn } from '../../../page/core/renumber.js';
import { reread } from '../../../page/core/reread.js';
import { withoutLine } from '../../../page/state/drawing/lines.js';
import { type Word, withWord } from '../../../page/state/meeting-edits.js';
import { wishesOnMap } from '../../../src/block/wishes-by-number.js';
import { dress } from '../../../src/dress.js';
import { seamOf } from '../../../src/fit/seam-reference.js';
import type { BlockSource, Dressing } from '../../../src/formats/dressing.js';
import { toPoints } from '../../../src/geometry/polyline.js';
import { defaultDressing } from '../../../src/plan.js';
import { builtIn } from '../../stitches/dictionary.js';

/** One seam across, one down that crosses it, and one that butts into that one: each in a stitch of its own. */
const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="160mm" height="120mm" viewBox="0 0 160 120">
  <g fill="none" stroke="#000"><path d="M0 0H160V120H0Z"/><path d="M0 60L160 64"/><path d="M80 0L84 120"/><path d="M0 30L81 32"/></g></svg>`;
const source: BlockSource = { file: 'block.svg', svg, stops: null, snap: 0.3, through: [] };
const blockOf = (from: BlockSource) => readBlock(from, null);
const { map } = await blockOf(source);
/** A seam that another crosses. */
const CROSSED = map.junctions.find(({ arms }) => arms.length === 4)!.through!;
const STITCHES = ['feather', 'herringbone', 'blanket'];
const plain: Dressing = (() => {
  const dressing = defaultDressing(map, { source, dictionary: builtIn, stitch: 'fly' });
  const treatments = dressing.treatments.map((one, t) => ({
    ...one,
    rows: [{ ...one.rows[0], stitch: STITCHES[t] }],
  }));
  return { ...dressing, treatments };
})();

const stitchesOf = (dressing: Dressing) => dressing.treatments.map(({ rows }) => rows[0].stitch).sort();
const meetings = async (dressing: Dressing, line: number): Promise<readonly MeetingPlace[]> =>
  meetingsOf(
    await blockOf(dressing.block),
    (await blockOf(withoutWishes(dressing.block))).map,
    dressing,
    line,
  );
const said = (dressing: Dressing, meeting: MeetingPlace, word: Word) =>
  reread(dressing, withWord(dressing.block, meeting, word), blockOf);
/** Every treatment lies on the seam whose number it has. */
const isNumbered = async (dressing: Dressing) => {
  const { map: now } = await blockOf(dressing.block);
  return dressing.treatments.every(({ seam }) => {
    const found = seamOf(now, seam);
    return found !== null && found !== 'outline' && found.id === seam.id;
  });
};
const sewn = async (dressing: Dressing) =>
  dress(await blockOf(dressing.block), dressing, builtIn).design.stops.map(({ seams, runs }) => [
    seams,
    toPoints(runs.xy).length,
  ]);

describe('a word on a junction', () => {
  it('lets the seam run through that is named, as the command line does', async () => {
    const [crossing] = (await meetings(plain, CROSSED)).filter(({ runsOn }) => runsOn.length > 1);
    const other = crossing.runsOn.find(({ now }) => now !== crossing.through)!;
    const done = await said(plain, crossing, { through: other.plain });
    const meets = crossing.runsOn.find(({ now }) => now === crossing.through)!.plain;
    const told = wishesOnMap(map, { through: [{ seam: other.plain, meets }] });
    expect(await sewn(done)).toEqual(await sewn({ ...plain, block: { ...source, through: told.through! } }));
    const [again] = (await meetings(done, CROSSED)).filter(({ runsOn }) => runsOn.length > 1);
    expect([again.through, again.said.through]).toEqual([other.now, other.plain]);
    expect((await said(done, again, { through: null })).block).toEqual(source);
  });

  it('parts a seam: both halves have the work of the whole, numbers follow, and taken back all is as it was', async () => {
    const line = map.seams.find(({ crossings }) => crossings.length > 0)!.id;
    const [place] = (await meetings(plain, line)).filter(({ split }) => split);
    const parted = await said(plain, place, { line: { split: place.split!.plain } });
    const was = plain.treatments.find(({ seam }) => seam.id === line)!.rows[0].stitch;
    expect(stitchesOf(parted)).toEqual([...STITCHES, was].sort());
    expect(await isNumbered(parted)).toBe(true);
    const lines = (await blockOf(parted.block)).map.seams.map(({ id }) => id);
    const places = (await Promise.all(lines.map((id) => meetings(parted, id)))).flat();
    const back = await said(parted, places.find((one) => one.said.split !== null)!, { line: null });
    expect(back.treatments.map(({ seam, rows }) => [seam, rows])).toEqual(
      plain.treatments.map(({ seam, rows }) => [seam, rows]),
    );
    expect(back.block).toEqual(source);
  });

  it('makes two seams one line, which has one treatment', async () => {
    const places = (await Promise.all(map.seams.map(({ id }) => meetings(plain, id)))).flat();
    const place = places.find(({ joins, along }) => joins.length > 0 && along > 0.9)!;
    const joined = await said(plain, place, { line: { join: [place.own, place.joins[0].plain] } });
    expect(await isNumbered(joined)).toBe(true);
    const { map: now } = await blockOf(joined.block);
    expect(joined.treatments.length).toBe(now.seams.length);
    expect((await blockOf(joined.block)).findings.map(({ code }) => code)).not.toContain('join-lost');
  });

  it('goes along when lines are drawn anew, and counts seams as they are then', async () => {
    const { drawing } = await bareBlock(await blockOf(source), plain);
    const drawn = await redraw(plain, drawing, blockOf);
    const place = (await meetings(drawn, CROSSED)).find(({ runsOn }) => runsOn.length > 1)!;
    const parted = await said(drawn, place, { line: { split: place.split!.plain } });
    // the line that butts in further up is taken out: it is counted first
    const first = drawing.lines.find(({ nodes }) => nodes.every(({ at }) => at[1] < 40))!;
    const less = await redraw(parted, withoutLine(drawing, first.id), blockOf);
    const now = await blockOf(less.block);
    expect(now.findings.map(({ code }) => code)).not.toContain('split-lost');
    const { map: whole } = await blockOf(withoutWishes(less.block));
    expect(now.map.seams.length).toBe(whole.seams.length + 1);
    expect(less.block.split![0].seam).not.toBe(parted.block.split![0].seam);
  });
});

describe('numbers of treatments', () => {
  it('are those of the seams they lie on, whatever they were when the block was drawn otherwise', () => {
    const stale = plain.treatments.map((one) => ({ ...one, seam: { ...one.seam, id: 7 } }));
    const done = numberedOn({ ...plain, treatments: stale }, map);
    expect(done.treatments).toEqual(plain.treatments);
    expect(numberedOn(plain, map)).toBe(plain);
  });

  it('of one that lies on none is that of none', () => {
    const [first, ...rest] = plain.treatments;
    const gone = {
      ...first,
      seam: {
        ...first.seam,
        middle: [500, 500] as const,
        ends: [
          [490, 500],
          [510, 500],
        ] as const,
      },
    };
    const done = numberedOn({ ...plain, treatments: [gone, ...rest] }, map);
    expect(done.treatments[0].seam.id).toBeGreaterThan(map.seams.length);
    expect(new Set(done.treatments.map(({ seam }) => seam.id)).size).toBe(plain.treatments.length);
  });
});
