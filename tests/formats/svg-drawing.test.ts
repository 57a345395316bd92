import { describe, expect, it } from 'vitest';
import { readSvgDrawing } from '../../src/formats/svg-drawing.js';
import { MOST_ELEMENTS } from '../../src/formats/svg-tree.js';
import { polylineLength, toPoints } from '../../src/geometry/polyline.js';
import { InputError } from '../../src/input-error.js';

const MM = 'width="100mm" height="100mm" viewBox="0 0 100 100"';
const svg = (body: string, attributes = MM) =>
  readSvgDrawing(`<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>\n${body}\n</svg>`, 'test.svg');
const points = async (body: string, attributes?: string) =>
  (await svg(body, attributes)).lines.map((line) =>
    toPoints(line.points).map((p) => p.map((v) => Math.round(v * 1e6) / 1e6)),
  );
const line = '<path d="M0 0 L10 0" stroke="#000" fill="none"/>';

describe('the size of a drawing', () => {
  // CSS Values and Units: 96 px = 1 in = 2.54 cm = 72 pt = 6 pc
  it.each([
    ['width="96" height="192"', 25.4, 50.8],
    ['width="1in" height="2in"', 25.4, 50.8],
    ['width="72pt" height="12pc"', 25.4, 50.8],
    ['width="2.54cm" height="50.8mm"', 25.4, 50.8],
    ['viewBox="0 0 96 192"', 25.4, 50.8],
    ['viewBox="0 0 1 2" width="25.4mm"', 25.4, 50.8],
    ['viewBox="0 0 96 192" width="100%" height="100%"', 25.4, 50.8],
  ])('is read from %s', async (attributes, width, height) => {
    const drawing = await svg(line, attributes);
    expect(drawing.width).toBeCloseTo(width, 9);
    expect(drawing.height).toBeCloseTo(height, 9);
  });

  it('keeps shapes true and centers them in a frame of another shape', async () => {
    expect(await points(line, 'width="200mm" height="100mm" viewBox="0 0 50 50"')).toEqual([
      [
        [50, 0],
        [70, 0],
      ],
    ]);
    expect(
      await points(line, 'width="200mm" height="100mm" viewBox="-5 0 50 50" preserveAspectRatio="none"'),
    ).toEqual([
      [
        [20, 0],
        [60, 0],
      ],
    ]);
    expect(
      await points(
        line,
        'width="200mm" height="100mm" viewBox="0 0 50 50" preserveAspectRatio="xMaxYMin slice"',
      ),
    ).toEqual([
      [
        [0, 0],
        [40, 0],
      ],
    ]);
  });
});

describe('shapes', () => {
  it('are read as lines, subpaths apart', async () => {
    expect(await points('<line x1="1" y1="2" x2="3" y2="4" stroke="red"/>')).toEqual([
      [
        [1, 2],
        [3, 4],
      ],
    ]);
    expect(await points('<polyline points="0,0 5-5,10 0" fill="none"/>')).toEqual([
      [
        [0, 0],
        [5, -5],
        [10, 0],
      ],
    ]);
    expect(await points('<polygon points="0 0 5 5 0 5"/>')).toEqual([
      [
        [0, 0],
        [5, 5],
        [0, 5],
        [0, 0],
      ],
    ]);
    expect(await points('<rect x="1" y="2" width="3" height="4"/>')).toEqual([
      [
        [1, 2],
        [4, 2],
        [4, 6],
        [1, 6],
        [1, 2],
      ],
    ]);
    expect(await points('<path fill="none" d="M0 0h5v5H0zM9 9 l1 1 m1 0 l1-1"/>')).toEqual([
      [
        [0, 0],
        [5, 0],
        [5, 5],
        [0, 5],
        [0, 0],
      ],
      [
        [9, 9],
        [10, 10],
      ],
      [
        [11, 10],
        [12, 9],
      ],
    ]);
  });

  it('with round sides have the length of the true curve', async () => {
    const { lines } = await svg(
      '<circle cx="50" cy="50" r="20"/><ellipse cx="50" cy="50" rx="30" ry="20"/><rect width="40" height="20" rx="5"/>',
    );
    const lengths = lines.map((l) => polylineLength(l.points));
    // perimeter of an ellipse by Ramanujan's second formula, good to 1e-9 at this shape
    const h = (10 / 50) ** 2;
    const ellipse = Math.PI * 50 * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    [40 * Math.PI, ellipse, 2 * (30 + 10) + 10 * Math.PI].forEach((length, i) => {
      expect(Math.abs(lengths[i] / length - 1)).toBeLessThan(1e-5);
    });
    expect(lines.every(({ closed }) => closed)).toBe(true);
  });

  it('take the transforms of all their groups, outermost first', async () => {
    expect(
      await points(
        `<g transform="translate(10 20)"><g transform="rotate(90)"><g transform="scale(2)">${line}</g></g></g>`,
      ),
    ).toEqual([
      [
        [10, 20],
        [10, 40],
      ],
    ]);
    expect(await points(`<g transform="rotate(90, 5, 5) matrix(1 0 0 1 1 0)">${line}</g>`)).toEqual([
      [
        [10, 1],
        [10, 11],
      ],
    ]);
  });

  // 90 degrees = 100 gradians = a quarter turn; 1 in = 96 px, so 10 units here are 10 px
  it.each([
    'style="transform: translate(10px, 20px) rotate(90deg) scale(2)"',
    'style="transform: matrix(0, 2, -2, 0, 10, 20)"',
    'style="transform:translateX(10px) translateY(20px) rotate(100grad) scale(2, 2);transform-origin:0 0"',
    'style="transform: translate(10px,20px) rotate(0.25turn) scale(2)" transform="scale(7)"',
    'class="moved"',
  ])('take transforms from styles: %s', async (attributes) => {
    const style = '<style>.moved { transform: translate(10px, 20px) rotate(90deg) scale(2) }</style>';
    expect(await points(`${style}<g ${attributes}>${line}</g>`)).toEqual([
      [
        [10, 20],
        [10, 40],
      ],
    ]);
  });

  it('are read once of a switch, and inside links and drawings in the drawing', async () => {
    const other = '<path d="M0 0 L0 99" stroke="#000"/>';
    const choice = `<switch><foreignObject requiredExtensions="x">${other}</foreignObject><g systemLanguage="de">${other}</g><a>${line}</a>${other}</switch>`;
    expect(await points(choice)).toEqual(await points(line));
    const nested = `<svg x="10" y="20" width="50" height="30" viewBox="0 0 10 10">${line}</svg>`;
    // 30 units high: scale 3; centered across 50 units: (50 - 30) / 2 = 10 further in
    expect(await points(nested)).toEqual([
      [
        [20, 20],
        [50, 20],
      ],
    ]);
    const half = `<svg width="50%" viewBox="0 0 10 10" preserveAspectRatio="xMinYMin">${line}</svg>`;
    expect(await points(half)).toEqual([
      [
        [0, 0],
        [50, 0],
      ],
    ]);
  });

  it('stay true arcs under a slanting transform', async () => {
    // a sheared circle keeps its area (the determinant is 1)
    const { lines } = await svg('<circle r="10" transform="translate(50 50) skewX(40)"/>');
    const ring = toPoints(lines[0].points);
    const area = ring.slice(1).reduce((sum, [x, y], i) => sum + (ring[i][0] * y - x * ring[i][1]) / 2, 0);
    expect(Math.abs(area / (100 * Math.PI) - 1)).toBeLessThan(1e-4);
  });

  it('are drawn where they are used', async () => {
    expect(
      await points(
        `<defs><g id="a">${line}</g></defs><use href="#a" x="3"/><use xlink:href="#a" transform="scale(2)" y="4"/>`,
      ),
    ).toEqual([
      [
        [3, 0],
        [13, 0],
      ],
      [
        [0, 8],
        [20, 8],
      ],
    ]);
    expect(
      await points(
        `<symbol id="s" viewBox="0 0 10 10">${line}</symbol><use href="#s" x="5" width="50" height="50"/>`,
      ),
    ).toEqual([
      [
        [5, 0],
        [55, 0],
      ],
    ]);
  });

  it('are left out where nothing is drawn', async () => {
    const hidden = ['defs', 'symbol', 'clipPath', 'mask', 'pattern', 'marker'].map(
      (name) => `<${name}>${line}</${name}>`,
    );
    const unseen = [
      '<g display="none"><rect width="9" height="9"/></g>',
      '<g style="display:none"><g style="display:inline"><rect width="9" height="9"/></g></g>',
      '<rect width="9" height="9" style="visibility:hidden"/>',
      '<rect width="9" height="9" fill="none" stroke="none"/>',
      '<rect width="9" height="9" fill="none" stroke="transparent"/>',
      '<text x="4">M0 0 L9 9</text>',
    ];
    expect(await points([...hidden, ...unseen, line].join(''))).toHaveLength(1);
  });
});

describe('what a drawing holds beside its lines', () => {
  const told = async (body: string, attributes?: string) => (await svg(body, attributes)).findings ?? [];

  it('is told once a kind, with a count and the first place', async () => {
    const clips =
      '<g clip-path="url(#c)">\n<path d="M0 0h9"/></g><path d="M0 2h9" style="clip-path: url(#c)"/>';
    const [first, second, third] = await told(
      `${clips}<text>A</text><rect mask="url(#m)" width="4" height="4"/>`,
    );
    expect(first).toMatchObject({ level: 'note', code: 'clip-ignored' });
    expect(first.message).toMatch(
      /^2 elements have a clip-path, the first test\.svg line 2 \(g\); it is not/,
    );
    expect(second.message).toMatch(/^test\.svg line 3 \(rect\) has a mask; it is not applied/);
    expect(third.message).toMatch(
      /^test\.svg line 3 \(text\) holds no lines and is left out; turn text into/,
    );
  });

  it('is nothing where nothing is cut or left out', async () => {
    const uncut = `<g clip-path="none">${line}</g><g mask="url(#m)"><desc/></g>`;
    const unseen = '<defs><text>A</text></defs><text display="none">B</text>';
    expect(await told(uncut + unseen)).toEqual([]);
  });

  it('is told of style rules that look further than one element, when they paint or hide', async () => {
    const rules =
      'g .b, .a:hover { display: none } .c text { font-size: 9px } .a { fill: none } @media print {.a {}}';
    const [finding, ...others] = await told(`<style>${rules}</style>${line}`);
    expect(others).toEqual([]);
    expect(finding.message).toMatch(/^test\.svg has 2 style rules, the first for "g \.b", not applied/);
  });

  it('is the size that was taken where it gives none of its own', async () => {
    const size = async (attributes: string) => (await told(line, attributes)).map(({ message }) => message);
    const taken = (why: string) => [
      expect.stringMatching(new RegExp(`^test\\.svg ${why} from its viewBox, at 96`)),
    ];
    const box = 'viewBox="0 0 96 192"';
    expect(await size(`width="100%" height="100%" ${box}`)).toEqual(
      taken('is 100% of the page it stands on; 25\\.4 x 50\\.8 mm was taken'),
    );
    expect(await size(box)).toEqual(taken('says no width and height; 25\\.4 x 50\\.8 mm was taken'));
    expect((await size('class="x"'))[0]).toMatch(/2\.6 x 0\.0 mm was taken from its coordinates/);
    expect(await size(`width="30mm" ${box}`)).toEqual([]);
    expect(await size('width="96" height="192"')).toEqual([]);
  });
});

describe('the fabric of a closed shape', () => {
  const fills = async (body: string) => (await svg(body)).lines.map(({ fill }) => fill);
  const square = 'd="M0 0h9v9h-9z"';

  it.each([
    [`<path ${square} fill="#ABCDEF"/>`, '#abcdef'],
    [`<path ${square} fill="rebeccapurple"/>`, '#663399'],
    [`<path ${square} fill="rgb(0, 128, 255)" stroke="#000"/>`, '#0080ff'],
    [`<path ${square} style="fill: hsl(120 100% 50%); stroke: none"/>`, '#00ff00'],
    [`<g fill="#123456"><path ${square}/></g>`, '#123456'],
    [
      `<style>.a, .b { fill: #c6943f } path { fill: #000000 }</style><path class="x b" ${square}/>`,
      '#c6943f',
    ],
    [
      `<linearGradient id="g"><stop stop-color="#446688"/></linearGradient><path ${square} fill="url(#g)"/>`,
      '#446688',
    ],
    [`<path ${square}/>`, '#000000'],
  ])('is read from %s', async (body, hex) => {
    expect((await fills(body)).at(-1)).toBe(hex);
  });

  it.each([
    `<path ${square} fill="none" stroke="#000"/>`,
    `<path ${square} stroke="#000"/>`,
    '<path d="M0 0h9v9" fill="#ff0000" stroke="#000"/>',
    '<line x2="9" y2="9" fill="#ff0000"/>',
  ])('is none for %s', async (body) => {
    expect(await fills(body)).toEqual([null]);
  });
});

describe('a drawing that cannot be used', () => {
  const bombs = [...'bcdefghij']
    .map((c, i) => `<!ENTITY ${c} "${`&${'abcdefghi'[i]};`.repeat(10)}">`)
    .join('');
  it.each([
    ['hello', 'line 1', /not well-formed/],
    ['', 'line', /not well-formed/],
    ['<html></html>', 'line 1', /begins with <html>/],
    [`<svg ${MM}><g>\n<path d="M0 0 L9 9"/>\n`, 'line 3', /not well-formed/],
    [`<svg ${MM}>\n<path d="M0 0 L9"/></svg>`, 'line 2 (path)', /path data/],
    [`<svg ${MM}>\n<path d="M0 0 L NaN 9"/></svg>`, 'line 2 (path)', /path data has "N"/],
    [`<svg ${MM}>\n\n<line x2="wide"/></svg>`, 'line 3 (line)', /x2 is "wide"/],
    [`<svg ${MM}><polyline points="1 2 3"/></svg>`, 'line 1 (polyline)', /3 numbers/],
    [`<svg ${MM}><path d="M0 0 L 1e300 1e300"/></svg>`, 'line 1 (path)', /a point lies at/],
    [`<svg ${MM}><path d="M0 0 L 1e999 0"/></svg>`, 'line 1 (path)', /no number/],
    [`<svg ${MM}><circle r="20000"/></svg>`, 'line 1 (circle)', /a point lies at/],
    [`<svg ${MM}><g transform="turn(3)"/></svg>`, 'line 1 (g)', /transform is "turn\(3\)"/],
    [
      `<svg ${MM}><g style="transform: rotate3d(1, 1, 1, 45deg)"/></svg>`,
      'line 1 (g)',
      /transform is "rotate3d/,
    ],
    [`<svg ${MM}><g style="transform: translate(10%)"/></svg>`, 'line 1 (g)', /transform is "translate\(10%/],
    [
      `<svg ${MM}><g style="transform: rotate(9deg); transform-origin: center"/></svg>`,
      'line 1 (g)',
      /transform-origin is "center"/,
    ],
    [`<svg ${MM}><g style="rotate: 30deg"/></svg>`, 'line 1 (g)', /rotate is "30deg"/],
    [`<svg ${MM}><text>no lines</text></svg>`, 'test.svg', /no lines/],
    ['<svg viewBox="0 0 0 9"/>', 'line 1', /viewBox "0 0 0 9" shows nothing/],
    ['<svg viewBox="0 0 0 0"/>', 'line 1', /viewBox "0 0 0 0" shows nothing/],
    ['<svg viewBox="0 0 9"/>', 'line 1', /viewBox is "0 0 9"/],
    ['<svg width="12 apples" height="3"/>', 'line 1', /width is "12 apples"/],
    [`<svg ${MM}><use href="#gone"/></svg>`, 'line 1 (use)', /#gone/],
    [`<svg ${MM}><g id="a"><use href="#a"/></g></svg>`, 'line 1 (use)', /uses itself/],
    [`<!DOCTYPE svg [<!ENTITY a "lol">${bombs}]>\n<svg ${MM}><text>&j;</text></svg>`, 'line 2', /entity/],
  ])('is refused with its line: %s', async (text, place, wrong) => {
    const error = await readSvgDrawing(text, 'test.svg').catch((e: unknown) => e);
    expect(error).toBeInstanceOf(InputError);
    expect((error as InputError).where).toContain(place);
    expect((error as InputError).wrong).toMatch(wrong);
    expect((error as InputError).message).not.toContain('\n');
  });

  it('is refused when its use elements multiply without end', async () => {
    const levels = Array.from(
      { length: 12 },
      (_, i) => `<g id="l${i + 1}">${`<use href="#l${i}"/>`.repeat(10)}</g>`,
    );
    const text = `<svg ${MM}><defs><path id="l0" d="M0 0h1"/>${levels.join('')}</defs><use href="#l12"/></svg>`;
    await expect(readSvgDrawing(text, 'test.svg')).rejects.toThrow(/multiply/);
  });

  it('is refused when groups and use elements nest in each other without end', async () => {
    const levels = Array.from({ length: 190 }, (_, i) => {
      return `<g id="n${i + 1}">${'<g>'.repeat(180)}<use href="#n${i}"/>${'</g>'.repeat(180)}</g>`;
    });
    const body = `<defs><path id="n0" d="M0 0h1"/>${levels.join('')}</defs>`;
    await expect(svg(`${body}<use href="#n190"/>`)).rejects.toThrow(/more than 1000 deep/);
    // known from shallow places first, it is as deep in the end
    const uses = levels.map((_, i) => `<use href="#n${i + 1}"/>`).join('');
    await expect(svg(body + uses)).rejects.toThrow(/more than 1000 deep/);
    expect((await svg(`${body}<use href="#n3"/>`)).lines).toHaveLength(1);
  });

  it('is refused as soon as it holds more elements than any block', async () => {
    await expect(svg('<g/>'.repeat(MOST_ELEMENTS))).rejects.toThrow(/holds more than 50000 elements/);
    // what follows is not looked at, well-formed or not
    await expect(svg(`${'<g/>'.repeat(MOST_ELEMENTS)}</broken>`)).rejects.toThrow(/50000 elements/);
  });

  // each of these would go on for minutes if a length, a color or a comment were gone through again from every place
  it('is refused, and not puzzled over, when it holds endless spaces', async () => {
    const spaces = ' '.repeat(400_000);
    await expect(svg(line, `width="1${spaces}x"`)).rejects.toThrow(/width is "1/);
    await expect(svg(`<g transform="translate(1${spaces}x"/>`)).rejects.toThrow(/transform is/);
    await expect(svg(`<rect width="9" height="9" fill="url(#a${spaces}"/>`)).rejects.toThrow(/fill is/);
  });
});

describe('a style sheet', () => {
  it('is read without its comments', async () => {
    const rules = '/* a /* b */ path { fill: #112233 } /* } */ path { fill: none } /* path { fill: #445566 }';
    expect((await svg(`<style>${rules}</style><path d="M0 0h9v9z"/>`)).lines.map(({ fill }) => fill)).toEqual(
      [null],
    );
    expect((await svg(`<style>${'/*'.repeat(400_000)}</style>${line}`)).lines).toHaveLength(1);
  });
});
