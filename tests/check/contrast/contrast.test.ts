import { beforeAll, describe, expect, it } from 'vitest';
import { withFabrics } from '../../../src/asked/fabrics.js';
import { readSvgBlock } from '../../../src/block/read-drawing.js';
import type { SeamMap } from '../../../src/block/seam-map.js';
import { contrastFindings } from '../../../src/check/contrast/contrast-findings.js';
import { contrastLook, type SewnThread } from '../../../src/check/contrast/thread-contrast.js';
import { contrast } from '../../../src/color/contrast.js';
import { type Difference, loadDifference } from '../../../src/color/difference.js';

/** Left of x = 30 one patch over the whole height, right of it two: seam 1 is upright and seam 2 butts into it. */
const svg = (left: string, upper: string, lower: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">
    <rect width="30" height="40" fill="${left}"/><rect x="30" width="30" height="15" fill="${upper}"/>
    <rect x="30" y="15" width="30" height="25" fill="${lower}"/></svg>`;
const panel = async (left: string, upper: string, lower: string) =>
  (
    await readSvgBlock(svg(left, upper, lower), 'panel.svg', {
      file: 'panel.svg',
      stops: null,
      snap: 0.3,
      through: [],
    })
  ).map;

/** Stitches of 4 mm across a line from one place to another, so far to each of its sides. */
function across([x0, y0]: number[], [x1, y1]: number[], left: number, right: number): SewnThread['runs'] {
  const length = Math.hypot(x1 - x0, y1 - y0);
  const [tx, ty] = [(x1 - x0) / length, (y1 - y0) / length];
  const points: number[] = [];
  for (let u = 1; u < length - 1; u += 2) {
    points.push(x0 + u * tx + left * ty, y0 + u * ty - left * tx);
    points.push(x0 + (u + 1) * tx - right * ty, y0 + (u + 1) * ty + right * tx);
  }
  return { xy: Float64Array.from(points), start: Int32Array.of(0, points.length / 2) };
}

const upright = (left = 3, right = 3) => across([30, 0], [30, 40], left, right);
const level = () => across([30, 15], [60, 15], 3, 3);
const lineAt = (map: SeamMap, isUpright: boolean): number =>
  map.seams.find(({ points }) => (points[0] === points[points.length - 2]) === isUpright)!.id;

const sewn = (
  line: number | null,
  hex: string,
  runs: SewnThread['runs'],
  more: Partial<SewnThread> = {},
): SewnThread => ({
  line,
  title: 'Feather',
  kind: line === null ? 'ornament' : 'row',
  thread: { name: `thread ${hex}`, hex, weight: 'No. 40' },
  stitch: 'feather',
  isHeavy: false,
  passes: 3,
  use: `line ${line}`,
  runs,
  ...more,
});

let difference: Difference;
beforeAll(async () => {
  difference = await loadDifference();
});
const lookAt = (map: SeamMap, ...threads: SewnThread[]) => {
  const look = contrastLook(map, threads, difference);
  return {
    ...look,
    codes: contrastFindings(map, look).map(({ code }) => code),
    findings: contrastFindings(map, look),
  };
};

describe('a thread along a seam', () => {
  it('is told stretch by stretch, with its contrast to the fabric on each hand', async () => {
    const map = await panel('#202020', '#f0f0f0', '#a02030');
    const { contrasts } = lookAt(map, sewn(lineAt(map, true), '#c9a227', upright()));
    const told = contrasts[0].places.map(({ from, to, sides }) => [
      Math.round(to! - from!),
      ...sides
        .map(({ patch, contrast: ratio }) => [map.patches[patch - 1].fabric, ratio] as const)
        .sort(([a], [b]) => (a! < b! ? -1 : 1)),
    ]);
    const on = (fabric: string) => [fabric, contrast('#c9a227', fabric)];
    expect(told).toEqual([
      [15, on('#202020'), on('#f0f0f0')],
      [25, on('#202020'), on('#a02030')],
    ]);
  });

  it('may melt into the fabric on one side', async () => {
    const map = await panel('#202020', '#f0f0f0', '#f0f0f0');
    const look = lookAt(map, sewn(lineAt(map, true), '#252525', upright()));
    expect([look.contrasts[0].shows, look.codes]).toEqual(['clear', []]);
  });

  it('is told when it melts into both, and a thread of the other kind of light is advised', async () => {
    const dark = await panel('#202020', '#282828', '#303030');
    const [told] = lookAt(dark, sewn(lineAt(dark, true), '#252525', upright())).findings;
    expect([told.code, told.level]).toEqual(['thread-lost', 'warning']);
    expect(told.message).toContain('a lighter thread');
    const light = await panel('#f0f0f0', '#fafafa', '#eeeeee');
    expect(lookAt(light, sewn(lineAt(light, true), '#ffffff', upright())).findings[0].message).toContain(
      'a darker thread',
    );
  });

  it('that stands to one hand alone is seen on the cloth of that hand alone', async () => {
    const map = await panel('#202020', '#f0f0f0', '#f0f0f0');
    // upward on the page, left is the dark patch
    const oneSided = sewn(lineAt(map, true), '#252525', across([30, 40], [30, 0], 4, -1));
    const other = sewn(lineAt(map, true), '#252525', across([30, 40], [30, 0], -1, 4));
    expect(lookAt(map, oneSided).contrasts[0].shows).toBe('lost');
    expect(lookAt(map, other).contrasts[0].shows).toBe('clear');
  });

  it('of which a part is lost is told, as far as that part counts', async () => {
    const map = await panel('#202020', '#222222', '#f0f0f0');
    const [told] = lookAt(map, sewn(lineAt(map, true), '#252525', upright())).findings;
    expect(told.code).toBe('thread-lost');
    expect(told.message).toContain('along parts of');
  });

  it('is to be seen, but not clear, between 1.6 and 2.5', async () => {
    const map = await panel('#ffffff', '#ffffff', '#ffffff');
    // W3C: #aaaaaa on white is 2.3 to 1, #949494 is 3 to 1, #fff000 is 1.2 to 1
    const shows = ['#aaaaaa', '#949494', '#fff000'].map(
      (hex) => lookAt(map, sewn(lineAt(map, true), hex, upright())).contrasts[0].shows,
    );
    expect(shows).toEqual(['visible', 'clear', 'lost']);
  });

  it('says nothing where no fabric is known', async () => {
    const map = await panel('#202020', '#f0f0f0', '#f0f0f0');
    const bare = { ...map, patches: map.patches.map((patch) => ({ ...patch, fabric: null })) };
    const look = lookAt(bare, sewn(lineAt(map, true), '#252525', upright()));
    expect([look.contrasts[0].shows, look.contrasts[0].score, look.codes]).toEqual(['unknown', null, []]);
  });

  it('wants one weight more on a busy print, and has it with a heavier thread', async () => {
    const block = await readSvgBlock(svg('#fff', '#fff', '#fff'), 'panel.svg', {
      file: 'panel.svg',
      stops: null,
      snap: 0.3,
      through: [],
    });
    const colors = [{ hex: '#ffffff', share: 1 }];
    const fabrics = [{ patch: { id: 1, at: null }, colors, busyness: 0.8 }];
    const { map } = withFabrics(block, { fabrics });
    const line = lineAt(map, true);
    expect(lookAt(map, sewn(line, '#000000', upright())).codes).toEqual(['thin-on-print']);
    expect(lookAt(map, sewn(line, '#000000', upright(), { isHeavy: true })).codes).toEqual([]);
  });
});

describe('an ornament', () => {
  it('is seen on the patch it stands on', async () => {
    const map = await panel('#202020', '#f0f0f0', '#f0f0f0');
    const there = sewn(null, '#252525', across([10, 10], [20, 10], 2, 2));
    const [{ places, shows }] = lookAt(map, there).contrasts;
    expect(places.map(({ sides }) => sides.map(({ patch }) => map.patches[patch - 1].fabric))).toEqual([
      ['#202020'],
    ]);
    expect(shows).toBe('lost');
  });
});

describe('a finding', () => {
  it('counts a figure once, though two of its parts are worked in one thread', async () => {
    const map = await panel('#202020', '#f0f0f0', '#f0f0f0');
    const part = (use: string) => sewn(null, '#252525', across([10, 10], [20, 10], 2, 2), { use });
    const told = (...uses: string[]) => lookAt(map, ...uses.map(part)).findings[0].message;
    expect(told('ornament 0 thread 1', 'ornament 0 thread 1')).toContain('the fabrics of an ornament:');
    expect(told('ornament 0 thread 1', 'ornament 1 thread 1')).toContain('the fabrics of 2 ornaments:');
  });

  it('about the rows of one seam says that it lies on a print, of two that they do', async () => {
    const map = await panel('#ffffff', '#ffffff', '#ffffff');
    const print = { colors: [{ hex: '#ffffff', share: 1 }], busyness: 0.8 };
    const busy = { ...map, patches: map.patches.map((patch) => ({ ...patch, print })) };
    const [one, other] = [lineAt(map, true), lineAt(map, false)];
    const rows = (...lines: number[]) =>
      lookAt(busy, ...lines.map((line) => sewn(line, '#000000', line === one ? upright() : level())));
    expect(rows(one, one).findings[0].message).toMatch(/^seam \d lies on a busy print/);
    expect(rows(one, other).findings[0].message).toMatch(/^seams 1, 2 lie on a busy print|^seams 1-2 lie/);
  });
});

describe('treatments that meet', () => {
  const meet = async (first: string, second: string, stitch: string) => {
    const map = await panel('#ffffff', '#ffffff', '#ffffff');
    return lookAt(
      map,
      sewn(lineAt(map, true), first, upright()),
      sewn(lineAt(map, false), second, level(), { stitch }),
    );
  };

  it('are told with how different their threads look', async () => {
    const { meetings, codes } = await meet('#8c2f3f', '#2b3a5e', 'feather');
    expect(meetings.map((one) => one.difference)).toEqual([difference('#8c2f3f', '#2b3a5e')]);
    expect(codes).toEqual([]);
  });

  it('look alike in the same stitch and thread; another stitch sets them off', async () => {
    expect((await meet('#8c2f3f', '#8c2f3f', 'feather')).codes).toEqual(['look-alike']);
    expect((await meet('#8c2f3f', '#8c2f3f', 'cretan')).codes).toEqual([]);
  });

  it('in two threads that can hardly be told apart would do with one', async () => {
    expect((await meet('#8c2f3f', '#8d3040', 'cretan')).codes).toEqual(['threads-alike']);
  });
});
