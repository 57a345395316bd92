import { svgPathProperties } from 'svg-path-properties';
import { beforeAll, describe, expect, test } from 'vitest';
import { LIMITS } from '../../../src/check/density/limits.js';
import { loadDifference } from '../../../src/color/difference.js';
import { contrastOverlay } from '../../../src/draw/overlays/contrast-marks.js';
import { contrastStretches } from '../../../src/draw/overlays/contrast-stretches.js';
import { drawOverlays } from '../../../src/draw/overlays/overlay-picture.js';
import { workOfDressed } from '../../../src/draw/overlays/work-of-dressed.js';
import { type Dressed, dress } from '../../../src/dress.js';
import type { Dressing } from '../../../src/formats/dressing.js';
import { insideRings } from '../../../src/geometry/area.js';
import { type ThreadLook, threadLook } from '../../../src/thread-look.js';
import { demoPanel } from '../../gallery/demo-panel.js';
import { builtIn } from '../../stitches/dictionary.js';
import { type Seen, titled } from '../svg-elements.js';

let dressed: Dressed;
let look: ThreadLook;
beforeAll(async () => {
  dressed = await demoPanel();
  look = threadLook(dressed, await loadDifference());
});

const drawn = (of: Dressed) => drawOverlays(workOfDressed(of), new Set(['contrast']), LIMITS.firm);
const MARK = /^(.+), (.+) on patch (\d+): contrast ([\d.]+), (clear|visible|melting)$/;
const marksIn = (of: Dressed) =>
  titled(drawn(of), MARK).map((seen) => {
    const [, where, thread, patch, ratio, verdict] = MARK.exec(seen.title!)!;
    return { seen, where, thread, patch: Number(patch), ratio, verdict };
  });
/** Cut off after one digit, as the findings tell it: 1.59 is not yet 1.6. */
const cut = (ratio: number) => (Math.floor(10 * ratio) / 10).toFixed(1);
const paths = ({ children }: Seen) => children.filter(({ name }) => name === 'path');
const isDashed = (seen: Seen) => paths(seen).some(({ attributes }) => 'stroke-dasharray' in attributes);
const broadest = (seen: Seen) =>
  Math.max(...paths(seen).map((path) => Number(path.attributes['stroke-width'])));
/** A band has strokes across it: a path of many short lines. */
const isHatched = (seen: Seen) =>
  paths(seen).some(({ attributes: { d } }) => (d.match(/M/g) ?? []).length > 1);

describe('a picture of contrast', () => {
  test('has one mark for each side of each stretch that the check measured, with its number and verdict', () => {
    // the demo panel has one thread to a seam
    const measured = look.contrasts.flatMap(({ of, places }) =>
      places.flatMap(({ sides }) =>
        sides.map(({ patch, contrast }) => {
          const verdict = contrast < 1.6 ? 'melting' : contrast < 2.5 ? 'visible' : 'clear';
          return `seam ${look.threads[of].line} ${patch} ${cut(contrast)} ${verdict}`;
        }),
      ),
    );
    expect(measured.length).toBeGreaterThan(30);
    const marks = marksIn(dressed).map(
      ({ where, patch, ratio, verdict }) => `${where} ${patch} ${ratio} ${verdict}`,
    );
    expect(marks.sort()).toEqual(measured.sort());
  });

  test('tells the three verdicts without color: thin lines, dashes, broad hatched bands', () => {
    const looks = marksIn(dressed).map(
      ({ seen, verdict }) =>
        `${verdict}: ${isDashed(seen) ? 'dashed' : isHatched(seen) ? 'hatched' : 'plain'}, ${broadest(seen)}`,
    );
    expect(new Set(looks)).toEqual(
      new Set(['clear: plain, 0.25', 'visible: dashed, 0.9', 'melting: hatched, 2.1']),
    );
  });

  test('has every mark on the side of its seam whose fabric it tells of', () => {
    const { patches } = dressed.block.map;
    const astray = marksIn(dressed).filter(({ seen, patch }) => {
      // by another library (svg-path-properties): the middle of what is drawn
      const path = new svgPathProperties(paths(seen)[0].attributes.d);
      const { x, y } = path.getPointAtLength(path.getTotalLength() / 2);
      return !insideRings([x, y], [patches[patch - 1].boundary]);
    });
    expect(astray.map(({ seen }) => seen.title)).toEqual([]);
  });

  test('writes the number beside each stretch that is below 2, and beside no other', () => {
    const below = look.contrasts.flatMap(({ places }) =>
      places.flatMap(({ sides }) => sides.flatMap(({ contrast }) => (contrast < 2 ? [cut(contrast)] : []))),
    );
    const plates = titled(drawn(dressed), /^contrast [\d.]+$/).map(({ title }) => title!.slice(9));
    expect(below.length).toBeGreaterThan(5);
    expect(plates.sort()).toEqual(below.sort());
  });

  test('has a mark for each color of thread on a seam, and one for what is worked twice in the same', () => {
    const { map } = dressed.block;
    const there = workOfDressed(dressed).contrasts!();
    const once = contrastStretches(map, there);
    expect(contrastStretches(map, [...there, ...there])).toEqual(once);
    const inBlack = there.map((one) => ({ ...one, thread: { ...one.thread, hex: '#000000' } }));
    const lanes = contrastStretches(map, [...there, ...inBlack]).map(({ lane }) => lane);
    expect(lanes).toEqual([...once.map(() => 0), ...once.map(() => 1)]);
  });

  test('names patches whose fabric is not known, has no mark on them, and says so where none is known', () => {
    const { map } = dressed.block;
    const without = (ids: readonly number[]): Dressed => {
      const patches = map.patches.map((one) => (ids.includes(one.id) ? { ...one, fabric: null } : one));
      return { ...dressed, block: { ...dressed.block, map: { ...map, patches } } };
    };
    const partOf = (of: Dressed) => {
      const { contrasts, frame, map } = workOfDressed(of);
      return contrastOverlay(map!, contrasts!(), { frame, size: 2.6 }).part;
    };
    const some = without([4, 7]);
    expect(partOf(some).entries.map(({ told }) => told)).toContain(
      'no mark: the fabric color of patches 4, 7 is not known',
    );
    const patches = new Set(marksIn(some).map(({ patch }) => patch));
    expect([patches.has(4), patches.has(7), patches.has(5)]).toEqual([false, false, true]);
    const none = without(map.patches.map(({ id }) => id));
    expect(partOf(none).heading).toContain('no patch has a fabric color');
    expect([partOf(none).entries, marksIn(none)]).toEqual([[], []]);
    expect(partOf(dressed).entries.some(({ told }) => told.startsWith('no mark'))).toBe(false);
  });

  test('goes round the edge of a block patch by patch, and once round an ornament in one thread', async () => {
    const [first] = dressed.dressing.treatments;
    const dressing: Dressing = {
      ...dressed.dressing,
      treatments: [{ ...first, seam: { id: 'outline', middle: null, ends: null } }],
      ornaments: [
        {
          ornament: 'rosebud',
          patch: { at: [65, 105] },
          turn: 0,
          parameters: { size: 20 },
          thread: first.rows[0].thread,
          passes: 3,
        },
      ],
    };
    const edged = dress(dressed.block, dressing, builtIn);
    const marks = marksIn(edged);
    const edge = marks.filter(({ where }) => where === 'the outline');
    const measured = threadLook(edged, await loadDifference()).contrasts.map(({ places }) =>
      places.flatMap(({ sides }) => sides.map(({ patch }) => patch)),
    );
    expect([...new Set(edge.map(({ patch }) => patch))].sort()).toEqual([...measured[0]].sort());
    const { patches } = edged.block.map;
    const outside = edge.filter(({ seen, patch }) => {
      const path = new svgPathProperties(paths(seen)[0].attributes.d);
      const { x, y } = path.getPointAtLength(path.getTotalLength() / 2);
      return !insideRings([x, y], [patches[patch - 1].boundary]);
    });
    expect(outside).toEqual([]);
    const rings = marks.filter(({ where }) => where === 'an ornament');
    expect(rings.map(({ patch }) => patch)).toEqual(measured[1]);
    // bud and stem are worked in one thread, and get one ring round both
    const [ring] = rings;
    const path = new svgPathProperties(paths(ring.seen)[0].attributes.d);
    expect(path.getTotalLength()).toBeGreaterThan(2 * Math.PI * 10 * 0.9);
  });
});
