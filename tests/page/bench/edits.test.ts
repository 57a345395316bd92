import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { legsCopied, legTakenIn, pointCopied } from '../../../page/state/bench/copied.js';
import { whereOf, workedWhere } from '../../../page/state/bench/endings.js';
import { copyOf, freshStitch } from '../../../page/state/bench/fresh.js';
import { joinAdded, joinRemoved } from '../../../page/state/bench/joins.js';
import { turnedInto } from '../../../page/state/bench/leg-fields.js';
import { legChanged, legsOf } from '../../../page/state/bench/legs.js';
import { type Kind, namesOf, RESERVED, renamed } from '../../../page/state/bench/names.js';
import { pointAdded } from '../../../page/state/bench/points.js';
import {
  onThread,
  threadAdded,
  threadOf,
  threadRemoved,
  threadsOf,
} from '../../../page/state/bench/threads.js';
import { checkStitchFile } from '../../../src/stitches/check.js';
import { withoutIndex } from '../../../src/stitches/copies.js';
import { parseStitch } from '../../../src/stitches/parse.js';
import type { StitchRecord } from '../../../src/stitches/stitch-record.js';

const folder = join(import.meta.dirname, '../../../motifs/stitches');
const records: StitchRecord[] = readdirSync(folder).map((file) => {
  const text = readFileSync(join(folder, file), 'utf8');
  return copyOf(text, JSON.parse(text).title);
});
const anyRecord = fc.constantFrom(...records);
const titled = (title: string) => records.find((one) => one.title === title)!;

/** All that is sewn, at two sizes, whatever its parts are called. */
function sewn(record: StitchRecord): string {
  const stitch = parseStitch(record, 'any');
  const { width } = record.parameters;
  return JSON.stringify(
    [width.default, (width.min + width.max) / 2].map((wide) => {
      const { nodes, legs, ending, closing, joins, seats } = stitch.build({ width: wide });
      const plain = ({ name: _, ...leg }: (typeof legs)[number]) => ({ ...leg, path: [...leg.path] });
      return [
        [...nodes],
        legs.map(plain),
        ending.map(plain),
        closing,
        joins,
        seats.map(({ u, v }) => [u, v]),
      ];
    }),
  );
}

const namesToChange = (record: StitchRecord, kind: Kind) =>
  namesOf(record, kind).filter(
    (name) => kind !== 'quantity' || !['repeat', 'width', ...RESERVED].includes(name),
  );

describe('a part of a stitch that is called otherwise', () => {
  it('changes nothing that is sewn, wherever it is named in the file; called as before, the file is as it was', () => {
    const kinds: Kind[] = ['point', 'leg', 'thread', 'quantity', 'seat'];
    const seen = new Set<Kind>();
    fc.assert(
      fc.property(anyRecord, fc.constantFrom(...kinds), fc.nat(100), (record, kind, which) => {
        const names = namesToChange(record, kind);
        fc.pre(names.length > 0);
        seen.add(kind);
        const was = names[which % names.length];
        const is = kind === 'quantity' ? 'otherwise9' : 'other wise';
        const after = renamed(record, kind, was, is);
        expect(namesOf(after, kind)).toContain(is);
        expect(sewn(after)).toBe(sewn(record));
        expect(renamed(after, kind, is, was)).toEqual(record);
      }),
      { numRuns: 400 },
    );
    expect([...seen].sort()).toEqual([...kinds].sort());
  });

  it('is called as before where the name is taken, or is no name', () => {
    const record = titled('Feather');
    const [first, second] = Object.keys(record.points);
    for (const name of [second, '', '9', 'a[0]']) expect(renamed(record, 'point', first, name)).toBe(record);
    for (const name of ['sin', 'length', 'Width', 'width'])
      expect(renamed(record, 'quantity', 'repeat', name)).toBe(record);
  });
});

describe('copies', () => {
  it('one copy of a point, or of legs, is the point and the legs themselves, and turns back into them', () => {
    fc.assert(
      fc.property(anyRecord, fc.nat(100), fc.boolean(), (record, which, isPoint) => {
        const names = Object.keys(record.points).filter((name) => !('count' in record.points[name]));
        const singles = record.legs.flatMap((entry, at) => ('legs' in entry ? [] : [at]));
        fc.pre((isPoint ? names : singles).length > 0);
        const name = names[which % names.length];
        const at = singles[which % singles.length];
        const copied = isPoint ? pointCopied(record, name, 1) : legsCopied(record, at, 1);
        const back = isPoint ? pointCopied(copied, name, null) : legsCopied(copied, at, null);
        expect(copied).not.toEqual(record);
        expect(back).toEqual(record);
        // in file order a copied point is where it was; what a leg lies beneath may then be several
        if (isPoint) expect(sewn(copied)).toBe(sewn(record));
      }),
      { numRuns: 200 },
    );
  });

  it('make a fan of one arm: a point and its leg worked five times, as the file of a maker would say it', async () => {
    let record = freshStitch('My fan');
    record = pointAdded(record, 4, 5, 'tip').record;
    record = {
      ...record,
      legs: [
        ...record.legs,
        { name: 'arm', kind: 'straight', from: 'next', to: 'tip' },
        { name: 'dip', kind: 'under', from: 'tip', to: 'next', beneath: 'arm' },
      ],
    };
    record = pointCopied(record, 'tip', 5);
    expect(legsOf(record)[1].leg).toMatchObject({ to: 'tip[0]' });
    record = legsCopied(record, 1, 5);
    expect(legsOf(record)[1].leg).toMatchObject({ to: 'tip[i]' });
    record = legTakenIn(record, 2);
    record = {
      ...record,
      points: { ...record.points, tip: { count: 5, at: ['length / 2 + i', 'width * 0.6'] } },
    };
    expect(await checkStitchFile(record, 'fan')).toEqual([]);
    const { legs } = parseStitch(record, 'fan').build({});
    expect(legs.map(({ name }) => name)).toEqual([
      'along',
      ...[0, 1, 2, 3, 4].flatMap((i) => [`arm[${i}]`, `dip[${i}]`]),
    ]);
  });
});

describe('threads', () => {
  it('a second thread takes the legs that are put in it, and gives them back where it is taken out', () => {
    fc.assert(
      fc.property(anyRecord, fc.nat(100), (record, which) => {
        const more = threadAdded(record, 'lacing of mine');
        expect(threadsOf(more)).toEqual([...threadsOf(record), 'lacing of mine']);
        expect(sewn(more)).toBe(sewn(record));
        const places = legsOf(more);
        const place = places[which % places.length];
        const laced = legChanged(more, place, (leg) => onThread(leg, 'lacing of mine', more));
        expect(legsOf(laced).filter(({ leg }) => threadOf(leg, laced) === 'lacing of mine')).toHaveLength(1);
        const back = threadRemoved(laced, 'lacing of mine');
        expect(threadsOf(back)).toEqual(threadsOf(record));
        expect(parseStitch(back, 'any').build({}).legs.length).toBe(
          places.length ? parseStitch(record, 'any').build({}).legs.length : 0,
        );
      }),
    );
  });
});

describe('joins and endings', () => {
  it('a point that is joined to one of the next unit lies there at every size, in a glide on the other hand', async () => {
    for (const symmetry of ['none', 'glide'] as const) {
      const fresh = { ...freshStitch('My own'), symmetry };
      const raised = {
        ...fresh,
        points: { ...fresh.points, start: [0, 'width / 4'] as const },
        joins: {},
      };
      const joined = joinAdded(raised, 'next', 'start');
      expect(await checkStitchFile(joined, 'own')).toEqual([]);
      for (const width of [4, 11, 20]) {
        const { nodes, joins } = parseStitch(joined, 'own').build({ width });
        expect(joins).toHaveLength(1);
        expect(nodes[3]).toBeCloseTo(symmetry === 'glide' ? -width / 4 : width / 4, 9);
      }
      expect(joinRemoved(joined, 'next').joins).toEqual({});
    }
  });

  it('a leg is worked in every repeat, once more at the end, or only there; back again the file is as it was', () => {
    fc.assert(
      fc.property(
        anyRecord,
        fc.nat(100),
        fc.constantFrom('repeat', 'again', 'end'),
        (record, which, where) => {
          const places = legsOf(record);
          const place = places[which % places.length];
          const was = whereOf(record, place.leg);
          const after = workedWhere(record, place, where as 'repeat');
          const is = legsOf(after)[which % places.length];
          expect(whereOf(after, is.leg)).toBe(where);
          const back = workedWhere(after, is, was);
          expect(back.legs).toEqual(record.legs);
          const plain = (list: readonly string[] = []) => list.map(withoutIndex).sort();
          expect(plain(back.closing)).toEqual(plain(record.closing));
        },
      ),
    );
  });

  it('a leg turned into another kind runs between the same points, and turned back is what it was', () => {
    fc.assert(
      fc.property(anyRecord, fc.nat(100), (record, which) => {
        const straight = legsOf(record).filter(({ leg }) => leg.kind === 'straight');
        fc.pre(straight.length > 0);
        const { leg } = straight[which % straight.length];
        for (const kind of ['curve', 'cord', 'loop', 'petal'] as const) {
          expect(turnedInto(turnedInto(leg, kind), 'straight')).toEqual(leg);
        }
      }),
    );
  });
});
