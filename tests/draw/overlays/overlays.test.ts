import { Resvg } from '@resvg/resvg-js';
import { svgPathProperties } from 'svg-path-properties';
import { beforeAll, describe, expect, test } from 'vitest';
import { density } from '../../../src/check/density/density.js';
import { mostOf } from '../../../src/check/density/field.js';
import { LIMITS } from '../../../src/check/density/limits.js';
import { onlyStops } from '../../../src/check/density/runs-of-stop.js';
import { stitchesOf, stitchesOfRecords } from '../../../src/check/density/sewn-stitches.js';
import { sharedHoles } from '../../../src/check/density/shared-holes.js';
import { writeDesign } from '../../../src/design/write-design.js';
import { drawDressed } from '../../../src/draw/dressed-picture.js';
import { heatPicture } from '../../../src/draw/overlays/heat.js';
import { heatScale } from '../../../src/draw/overlays/heat-scale.js';
import { drawOverlays, overlaysToldApart } from '../../../src/draw/overlays/overlay-picture.js';
import { SHOWN, type Shown } from '../../../src/draw/overlays/show.js';
import { workOfDressed } from '../../../src/draw/overlays/work-of-dressed.js';
import { workOfFile } from '../../../src/draw/overlays/work-of-file.js';
import { svgDocument } from '../../../src/draw/svg.js';
import type { Dressed } from '../../../src/dress.js';
import { readDst } from '../../../src/formats/dst-read.js';
import { type FlatField, tiledField } from '../../check/density/tiled-field.js';
import { demoPanel } from '../../gallery/demo-panel.js';
import { allWithin, svgTree, titled } from '../svg-elements.js';

let dressed: Dressed;
beforeAll(async () => {
  dressed = await demoPanel();
});

const drawn = (shown: readonly Shown[], stops?: readonly number[]) =>
  drawOverlays(workOfDressed(dressed, stops && new Set(stops)), new Set(shown), LIMITS.firm);
const piercings = (stops?: readonly number[]) => {
  const all = stitchesOf(dressed.design);
  return stops ? onlyStops(all, new Set(stops)) : all;
};
const placesIn = (d: string) => [...d.matchAll(/M(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [+x, +y]);

describe('a picture of density', () => {
  const field: FlatField = {
    left: 0,
    top: 0,
    cell: 0.25,
    columns: 30,
    rows: 20,
    counts: Array.from({ length: 600 }, (_, i) => (i * 7919) % 41),
    unit: 1 / Math.PI,
  };

  test('shows every cell in the color of its number, by an independent renderer (resvg)', () => {
    const scale = heatScale(LIMITS.firm.holes);
    const svg = svgDocument(
      { left: 0, top: 0, right: 7.5, bottom: 5 },
      'field',
      // stripes are another sign of the same, and are left out here
      heatPicture(tiledField(field, 7), scale, 'holes', 1).replace(/<path[^>]*fill="url[^>]*>/g, ''),
    );
    const { pixels, width } = new Resvg(svg, { fitTo: { mode: 'width', value: 150 } }).render();
    const wrong = field.counts.flatMap((count, i) => {
      const at = 4 * (width * (5 * Math.floor(i / 30) + 2) + 5 * (i % 30) + 2);
      const [r, g, b, a] = pixels.subarray(at, at + 4);
      const seen = a ? `#${[r, g, b].map((one) => one.toString(16).padStart(2, '0')).join('')}` : undefined;
      const step = scale.filter(({ above }) => count * field.unit > above + 1e-9).pop();
      return seen === step?.hex ? [] : [[i, count, seen, step?.hex]];
    });
    expect(wrong).toEqual([]);
  });

  test('tells in its legend the most that was measured, of the stops that are shown', () => {
    for (const stops of [undefined, [1], [1, 2, 3, 4, 5, 6]]) {
      const most = mostOf(density(piercings(stops)).holes);
      const named = titled(drawn(['density'], stops), /^densest places/)[0].children;
      expect(named.filter(({ title }) => title === `${most.toFixed(1)} holes`)).not.toEqual([]);
    }
  });
});

describe('a picture of needle holes', () => {
  test('has a dot for every piercing, where the needle goes in', () => {
    const [group] = titled(drawn(['holes']), /^needle holes$/);
    const dots = placesIn(group.children[1].attributes.d);
    const { ends } = piercings();
    expect(dots).toHaveLength(ends.length / 4);
    const far = dots.filter(([x, y], i) => Math.hypot(x - ends[4 * i + 2], y - ends[4 * i + 3]) > 0.0072);
    expect(far).toEqual([]);
  });

  test('has a ring round every hole that is pierced too often', () => {
    const often = sharedHoles(piercings(), LIMITS.fine.inOneHole.warning);
    const svg = drawOverlays(workOfDressed(dressed), new Set(['holes']), LIMITS.fine);
    const rings = titled(svg, /^pierced \d+ times$/);
    expect(often.length).toBeGreaterThan(0);
    expect(rings.map(({ attributes }) => [+attributes.cx, +attributes.cy])).toEqual(
      often.map(({ at }) => at.map((mm) => Math.round(mm * 100) / 100)),
    );
  });
});

describe('a picture of bare seam', () => {
  test('marks each stretch that was found, as long as it was found', async () => {
    // turned over, the first sprig of seam 8 would lie on the thread of another
    const turned = await demoPanel((dressing) => ({
      ...dressing,
      treatments: dressing.treatments.map((one) => (one.seam.id === 8 ? { ...one, side: 'left' } : one)),
    }));
    const found = turned.findings.filter(({ code }) => code === 'bare-seam' || code === 'bare-end');
    expect(found.length).toBeGreaterThan(0);
    const marks = titled(drawOverlays(workOfDressed(turned), new Set(['bare']), LIMITS.firm), /mm bare$/);
    expect(marks.map(({ title }) => title)).toEqual(
      found.map(({ seam, along }) => `seam ${seam}, ${(along![1] - along![0]).toFixed(1)} mm bare`),
    );
    // what is drawn, measured by another library (svg-path-properties): the stretch, and a bar of 3 mm at both ends
    const wrong = marks.filter(({ children }, i) => {
      const [from, to] = found[i].along!;
      const { d } = children.filter(({ name }) => name === 'path')[1].attributes;
      return Math.abs(new svgPathProperties(d).getTotalLength() - (to - from + 6)) > 0.05;
    });
    expect(wrong).toEqual([]);
  });
});

describe('a picture of color stops', () => {
  test('has a group for each, and no two look the same', () => {
    const groups = titled(drawn(['stops']), /^stop \d+: /);
    expect(groups).toHaveLength(dressed.design.stops.length);
    const looks = groups.map(
      ({ attributes }) => `${attributes.stroke} ${attributes['stroke-dasharray'] ?? 'solid'}`,
    );
    expect(new Set(looks).size).toBe(groups.length);
  });

  test('draws a line that is sewn in several passes once, and leaves no stitch out', () => {
    const [group] = titled(drawn(['stops']), /^stop 1: /);
    const lines = group.children[1].attributes.d.split('M').slice(1);
    const inPicture = new Set<string>();
    let count = 0;
    for (const line of lines) {
      const [at, ...steps] = line.split('l').map((pair) => pair.split(' ').map(Number));
      for (const [dx, dy] of steps) {
        const to = [at[0] + dx, at[1] + dy].map((mm) => Math.round(mm * 100) / 100);
        inPicture.add([`${at}`, `${to}`].sort().join(';'));
        count++;
        [at[0], at[1]] = to;
      }
    }
    const { ends, stops } = piercings();
    const sewn = new Set<string>();
    for (let i = stops[0].from; i < stops[0].to; i++) {
      const hole = (k: number) => [ends[k], ends[k + 1]].map((mm) => Math.round(mm * 100) / 100);
      sewn.add([`${hole(4 * i)}`, `${hole(4 * i + 2)}`].sort().join(';'));
    }
    expect(inPicture).toEqual(sewn);
    expect(count).toBe(sewn.size);
  });
});

describe('a picture of how work stands after some stops', () => {
  test('shows what is sewn and nothing else', () => {
    const titles = dressed.design.stops.map(({ title }) => title);
    const shownIn = (svg: string) =>
      allWithin(svgTree(svg)).flatMap(({ title }) =>
        title !== undefined && titles.includes(title) ? [title] : [],
      );
    expect(shownIn(drawn(['thread'], [1, 2, 3]))).toEqual(titles.slice(0, 3));
    expect(shownIn(drawn(['thread']))).toEqual(titles);
    const dots = placesIn(titled(drawn(['holes'], [2]), /^needle holes$/)[0].children[1].attributes.d);
    expect(dots).toHaveLength(piercings([2]).ends.length / 4);
  });

  test('lies on the picture of the whole: same cloth, same place', () => {
    const [some, all] = [drawn(['holes'], [1]), drawn(['holes'])].map((svg) => svgTree(svg).attributes);
    expect(some.viewBox).toBe(all.viewBox);
  });

  test('with all stops sewn has all that the plain picture has', () => {
    const plain = drawDressed(dressed);
    const body = plain.slice(plain.indexOf('<defs>'), plain.lastIndexOf('</svg>'));
    expect(drawn(['thread'])).toContain(body);
  });
});

describe('every picture of a piece of work', () => {
  const sizes = (svg: string) => {
    const { width, height, viewBox } = svgTree(svg).attributes;
    return { width, height, viewBox: viewBox.split(' ').map(Number) };
  };

  test('is at true size in mm, holds all of the cloth, and has a legend with a ruler', () => {
    const work = workOfDressed(dressed);
    const all: Shown[][] = [...SHOWN.map((one) => [one]), [...SHOWN]];
    for (const shown of all) {
      const svg = drawn(shown);
      const { width, height, viewBox } = sizes(svg);
      expect([width, height]).toEqual([`${viewBox[2]}mm`, `${viewBox[3]}mm`]);
      expect(viewBox[0]).toBeLessThan(work.frame.left);
      expect(viewBox[1] + viewBox[3]).toBeGreaterThan(work.frame.bottom + 10);
      expect(titled(svg, /^legend$/)).toHaveLength(1);
      expect(titled(svg, /^ruler of 50 mm$/)).toHaveLength(1);
    }
  });

  test('told apart is of the cloth alone, with the same marks, and each look of its legend is a picture of its own', () => {
    const work = workOfDressed(dressed);
    const { left, top, right, bottom } = work.frame;
    for (const shown of [...SHOWN.map((one) => [one]), [...SHOWN]]) {
      const whole = drawn(shown);
      const { svg, told } = overlaysToldApart(work, new Set(shown), LIMITS.firm);
      // labels at the edge of the cloth have room beyond it, the same all around; nothing is filled there
      const [x, y, wide, high] = sizes(svg).viewBox;
      expect([x + wide / 2, y + high / 2].map((at) => at.toFixed(1))).toEqual(
        [(left + right) / 2, (top + bottom) / 2].map((at) => at.toFixed(1)),
      );
      expect(wide - (right - left)).toBeCloseTo(high - (bottom - top), 1);
      const corner = new Resvg(svg, { fitTo: { mode: 'width', value: 200 } }).render().pixels.subarray(0, 4);
      expect(corner[3]).toBe(0);
      const marks = (of: string) => titled(of, /./).map(({ title }) => title!);
      const around = [/^legend$/, /^ruler of /];
      expect(marks(svg)).toEqual(marks(whole).filter((name) => !around.some((one) => one.test(name))));
      const looks = told.flatMap(({ entries }) => entries);
      expect(told.length > 0).toBe(shown.some((one) => one !== 'thread'));
      for (const look of looks) {
        const { pixels } = new Resvg(look.svg, { fitTo: { mode: 'width', value: 76 } }).render();
        expect(pixels.some((one) => one > 0)).toBe(true);
      }
    }
  });

  test('has its numbers as high as they are asked to be where the whole is shown small', () => {
    const radii = (least: number) => {
      const { svg } = overlaysToldApart(
        workOfDressed(dressed),
        new Set(['numbers']),
        LIMITS.firm,
        'mm',
        least,
      );
      return [...svg.matchAll(/<rect[^>]* height="([\d.]+)"[^>]* rx=/g)].map(([, high]) => Number(high));
    };
    expect(Math.max(...radii(0))).toBeLessThan(Math.min(...radii(6)));
    expect(Math.min(...radii(6))).toBeGreaterThanOrEqual(6);
  });

  test('tells lengths in inches to who measures so, on a ruler of inches', () => {
    const bare = new Set<Shown>(['bare']);
    const [inch, mm] = (['inch', 'mm'] as const).map((as) =>
      drawOverlays(workOfDressed(dressed), bare, LIMITS.firm, as),
    );
    // the bar, then its ticks
    const { d } = titled(inch, /^ruler of 2 inch$/)[0].attributes;
    expect(Number(/^M\S+ \S+?l(\S+) 0M/.exec(d)![1])).toBeCloseTo(50.8, 2);
    const xs = placesIn(d).map(([x]) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(50.8, 2);
    const lengths = (svg: string) =>
      titled(svg, / bare$/).map(({ title }) => title!.match(/([\d.]+) \S+ bare$/)!);
    expect(lengths(inch).map(([, length]) => Number(length))).toEqual(
      lengths(mm).map(([, length]) => expect.closeTo(Number(length) / 25.4, 2)),
    );
    expect(inch).not.toMatch(/\d mm\b/);
  });

  test('of a stitch file shows the same piercings and stops as that of its dressing', () => {
    const { records } = readDst(writeDesign(dressed.design), 'panel.dst');
    const file = workOfFile('panel', stitchesOfRecords(records));
    const svg = drawOverlays(file, new Set(['holes', 'stops', 'numbers']), LIMITS.firm);
    const dots = placesIn(titled(svg, /^needle holes$/)[0].children[1].attributes.d);
    expect(dots).toHaveLength(piercings().ends.length / 4);
    expect(titled(svg, /^stop \d+$/)).toHaveLength(dressed.design.stops.length);
  });

  test('is the same, byte for byte, when drawn again', () => {
    expect(drawn([...SHOWN])).toBe(drawn([...SHOWN]));
  });

  test('of nothing sewn is a picture all the same', () => {
    const none = { ends: new Float64Array(0), stops: [{ from: 0, to: 0, width: 0.4 }] };
    const svg = drawOverlays(workOfFile('empty', none), new Set(SHOWN), LIMITS.firm);
    expect(sizes(svg).viewBox.every(Number.isFinite)).toBe(true);
  });
});
