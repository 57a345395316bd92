import { describe, expect, test } from 'vitest';
import { readSvgDrawing } from '../../src/formats/svg-drawing.js';
import { insideArea } from '../../src/geometry/area.js';
import { boxOf } from '../../src/geometry/box.js';

const drawing = (inside: string) =>
  readSvgDrawing(
    `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 100 80">
<path d="M0 40 H100" stroke="black" fill="none"/>
${inside}
</svg>`,
    'panel.svg',
  );
const names = async (inside: string) => ((await drawing(inside)).keepClear ?? []).map(({ name }) => name);

describe('areas that a drawing keeps clear', () => {
  test('are no lines of the block, and lie where they are drawn', async () => {
    const { lines, keepClear } = await drawing(
      '<g transform="translate(10 5)"><rect x="20" y="10" width="30" height="12" data-seamwright="keep-clear" fill="red"/></g>',
    );
    expect(lines).toHaveLength(1);
    expect(boxOf(keepClear![0].area.rings)).toEqual({ left: 30, top: 15, right: 60, bottom: 27 });
  });

  test('are marked by attribute or class, on a shape, a group or a use', async () => {
    expect(await names('<circle id="charm" cx="20" cy="20" r="5" class="thing keep-clear"/>')).toEqual([
      'charm',
    ]);
    expect(
      await names(
        '<g data-seamwright="keep-clear"><title>the  monogram</title><path id="p1" d="M1 1 h9 v9 z"/><path d="M20 1 h9 v9 z"/></g>',
      ),
    ).toEqual(['the monogram', 'the monogram']);
    expect(
      await names(
        '<defs><circle id="c" r="4"/></defs><use href="#c" x="50" y="20" class="keep-clear" id="button"/>',
      ),
    ).toEqual(['button']);
    expect(await names('<circle cx="20" cy="20" r="5" data-seamwright="keep-clear"/>')).toEqual([
      'the area on line 3',
    ]);
  });

  test('need no paint, and are not there when they are not shown', async () => {
    expect(await names('<path class="keep-clear" id="a" d="M1 1 h9 v9" fill="none" stroke="none"/>')).toEqual(
      ['a'],
    );
    expect(await names('<g display="none"><path class="keep-clear" d="M1 1 h9 v9 z"/></g>')).toEqual([]);
  });

  test('have the holes that their fill rule leaves', async () => {
    const rings = 'd="M10 10 h30 v30 h-30 z M20 20 h10 v10 h-10 z" class="keep-clear"';
    const inHole = async (rule: string) =>
      insideArea([25, 25], (await drawing(`<path ${rings} fill-rule="${rule}"/>`)).keepClear![0].area);
    expect(await inHole('evenodd')).toBe(false);
    expect(await inHole('nonzero')).toBe(true);
  });

  test('may be images, as large as they are laid; text has no place that is known, and a finding says so', async () => {
    const photo = await drawing(
      '<image class="keep-clear" x="60" y="5" width="20" height="25" href="x.png"/>',
    );
    expect(boxOf(photo.keepClear![0].area.rings)).toEqual({ left: 60, top: 5, right: 80, bottom: 30 });
    expect(photo.findings).toEqual([]);
    const { keepClear, findings } = await drawing(
      '<text class="keep-clear" id="name" x="9" y="9">Ada</text>',
    );
    expect(keepClear).toBeUndefined();
    expect(findings).toEqual([expect.objectContaining({ level: 'warning', code: 'text-not-kept' })]);
  });

  test('are refused when the mark is another word, with the line', async () => {
    await expect(drawing('<path data-seamwright="keepclear" d="M1 1 h9 v9 z"/>')).rejects.toMatchObject({
      code: 'unknown-part',
      where: 'panel.svg line 3 (path)',
      right: 'it may be "keep-clear"',
    });
  });
});
