import { linkSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contents, newFolder, removeFolder, seamwright } from './run-cli.js';

const square = '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">';
const block = `${square}<path d="M0 20H60" stroke="#000" fill="none"/></svg>`;

/** A stitch file of one stop without a stitch, as the format's table gives it: header, end mark. */
function emptyStitchFile(records: number[] = []): Uint8Array {
  const header = new Uint8Array(512).fill(0x20);
  header.set(new TextEncoder().encode('LA:EMPTY           \rST:      0\rCO:  0\r'));
  return Uint8Array.from([...header, ...records, 0, 0, 0xf3]);
}

/** Bytes by a linear congruence (Numerical Recipes' constants, from memory): noise that is the same in every run. */
function noise(length: number): Uint8Array {
  let state = 12345;
  return Uint8Array.from({ length }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state >>> 24;
  });
}

const bomb = `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa">${Array.from({ length: 12 }, (_, i) => `<!ENTITY ${'bcdefghijklm'[i]} "${`&${'abcdefghijkl'[i]};`.repeat(10)}">`).join('')}]>${square}<text>&m;</text></svg>`;

/** A shape used by a group that is used by a group, and so on. */
const useChain = (links: number) => {
  const groups = Array.from({ length: links }, (_, i) => `<g id="g${i + 1}"><use href="#g${i}"/></g>`);
  return `${square}<defs><g id="g0"><path d="M0 9H60"/></g>${groups.join('')}</defs><use href="#g${links}"/></svg>`;
};

const dressing = (treatments: unknown[], others: object = {}) =>
  JSON.stringify({
    format: 'seamwright-dressing',
    version: 1,
    block: { file: 'block.svg', stops: null, snap: 0.3, through: [] },
    ends: 'tuck',
    outline: 'trim',
    gap: 0.6,
    treatments,
    threads: [{ name: 'gold', hex: '#c9a227', weight: 'No. 40' }],
    hoop: null,
    after: null,
    seed: 1,
    ...others,
  });
const named = (file: string, stops: number[] | null = null) => ({
  block: { file, stops, snap: 0.3, through: [] },
});
const ornament = { ornament: 'rozebud', at: [9, 9], parameters: {}, thread: 0, passes: 3 };
/** Text with zero bytes, as UTF-32 has them. */
const utf32 = (text: string) =>
  Uint8Array.from([...text].flatMap((letter) => [letter.charCodeAt(0), 0, 0, 0]));
const longName = 'ab '.repeat(3000);
const onSeam = (stitch: string) => ({
  seam: { id: 1, middle: null, ends: null },
  rows: [{ stitch, parameters: {}, thread: 0, passes: 3, offset: 0 }],
  ends: null,
  side: null,
  reverse: false,
});

const files: Record<string, string | Uint8Array> = {
  'lost.dressing.json': dressing([onSeam('fether')]),
  'laid-out.dressing.json': JSON.stringify(JSON.parse(dressing([onSeam('fether')])), null, 1),
  'ornaments.dressing.json': dressing([], { ornaments: Array.from({ length: 300 }, () => ornament) }),
  'endless-ornaments.dressing.json': dressing([], {
    ornaments: Array.from({ length: 1001 }, () => ornament),
  }),
  'no-block.dressing.json': dressing([], named('away.svg')),
  'zero-byte.dressing.json': dressing([], named('a\0b.svg')),
  'stops.dressing.json': dressing([], named('block.svg', [1])),
  'no-stops.dressing.json': dressing([], named('two-stops.dst')),
  'held.dressing.json': dressing([], {
    block: { ...named('away.svg').block, svg: `${square}\n<path d="M0 0HX"/></svg>` },
  }),
  'long.dressing.json': dressing([onSeam(longName)]),
  'utf-32.svg': utf32(block),
  'many.dressing.json': dressing(Array.from({ length: 20_001 }, () => 0)),
  'block.svg': block,
  'patches.svg': block.replace('M0 20H60', 'M0 0H60V20H0ZM0 20H60V40H0Z'),
  'not-xml.svg': 'a shopping list\neggs, thread\n',
  'broken.svg': `${square}<path d="M0 0H10"`,
  'no-lines.svg': `${square}<text>hello</text></svg>`,
  'empty.svg': '',
  'nan.svg': block.replace('H60', 'HNaN'),
  'huge.svg': block.replace('H60', 'H1e300'),
  'bomb.svg': bomb,
  'endless.svg': block.replace(/width="[^"]*"/, 'width="1e308mm"'),
  'use-chain.svg': useChain(1500),
  'empty-stop.dst': emptyStitchFile(),
  'two-stops.dst': emptyStitchFile([0, 0, 0xc3]),
  'cut.dst': emptyStitchFile([1, 0, 3]).subarray(0, 514),
  'header-only.dst': emptyStitchFile().subarray(0, 300),
  'noise.dst': noise(4000),
  'noise-behind-header.dst': Uint8Array.from([...emptyStitchFile().subarray(0, 512), ...noise(900)]),
  'notes.txt': 'eggs, thread',
  'broken.dressing.json': '{"format": "seamwright-dressing", "version": 1',
  'foreign.dressing.json': '{"hello": 1}',
};

interface Case {
  readonly when: string;
  readonly words: string[];
  /** what its one line must speak of */
  readonly says: RegExp;
}

const dress = (...words: string[]) => ['dress', ...words];
const cases: Case[] = [
  { when: 'a drawing is not XML', words: dress('not-xml.svg', '--out', 'x.dst'), says: /not-xml\.svg/ },
  { when: 'a drawing breaks off', words: dress('broken.svg'), says: /broken\.svg/ },
  { when: 'a drawing has no lines', words: dress('no-lines.svg'), says: /no-lines\.svg.*line/ },
  { when: 'a file is empty', words: dress('empty.svg'), says: /empty\.svg.*empty/ },
  { when: 'a coordinate is NaN', words: dress('nan.svg'), says: /nan\.svg/ },
  { when: 'a coordinate is huge', words: dress('huge.svg'), says: /huge\.svg/ },
  {
    when: 'the drawing itself is huge',
    words: dress('endless.svg', '--out', 'x.svg'),
    says: /endless\.svg.*10 m/,
  },
  {
    when: 'use elements make a long chain',
    words: ['seams', 'use-chain.svg'],
    says: /use-chain\.svg line \d+.*chain/,
  },
  { when: 'a drawing is an entity bomb', words: dress('bomb.svg'), says: /bomb\.svg/ },
  { when: 'the named stop is empty', words: dress('empty-stop.dst', '--stops', '1'), says: /stop 1/ },
  { when: 'a stop does not exist', words: dress('two-stops.dst', '--stops', '9'), says: /stop 9/ },
  { when: 'a stitch file is cut off', words: dress('cut.dst', '--stops', '1'), says: /cut\.dst byte \d+/ },
  {
    when: 'a stitch file ends in its header',
    words: dress('header-only.dst', '--stops', '1'),
    says: /header-only\.dst byte 300/,
  },
  { when: 'a stitch file is noise', words: dress('noise.dst', '--stops', '1'), says: /noise\.dst byte 0/ },
  {
    when: 'noise stands behind a header',
    words: dress('noise-behind-header.dst', '--stops', '1'),
    says: /byte \d+/,
  },
  { when: 'stops are not named', words: dress('two-stops.dst'), says: /--stops/ },
  {
    when: 'stops are named for a drawing',
    words: dress('block.svg', '--stops', '1'),
    says: /--stops.*drawing/,
  },
  {
    when: 'a stop to follow is named for a drawing',
    words: dress('block.svg', '--after', '1'),
    says: /--after.*drawing/,
  },
  {
    when: 'stops of a drawing are said to be for something',
    words: dress('block.svg', '--role', '3=seam'),
    says: /--role: block\.svg is a drawing and has no color stops; leave --role away/,
  },
  {
    when: 'stops are named, and said to be for something',
    words: dress('two-stops.dst', '--stops', '1', '--role', '2=seam'),
    says: /--role: stands beside --stops.*leave one of them away/,
  },
  { when: 'a file is of no known kind', words: dress('notes.txt'), says: /notes\.txt.*neither/ },
  { when: 'a file does not exist', words: dress('nowhere.svg'), says: /nowhere\.svg.*does not exist/ },
  { when: 'the input is a folder', words: dress('folder'), says: /folder.*is a folder/ },
  { when: 'a dressing breaks off', words: dress('broken.dressing.json'), says: /broken\.dressing\.json/ },
  {
    when: 'a JSON file is no dressing',
    words: dress('foreign.dressing.json'),
    says: /foreign\.dressing\.json/,
  },
  {
    when: 'a stitch does not exist',
    words: dress('block.svg', '--stitch', 'hering bone'),
    says: /did you mean "herringbone"/i,
  },
  {
    when: 'a stitch of the edge does not exist',
    words: dress('block.svg', '--edge', 'blankett'),
    says: /did you mean "blanket/i,
  },
  { when: 'a stitch to show does not exist', words: ['stitches', 'fether'], says: /did you mean "feather/i },
  { when: 'a stitch to try does not exist', words: ['swatch', 'fether'], says: /did you mean "feather/i },
  {
    when: 'a size has letters behind it',
    words: dress('block.svg', '--width', '12mm'),
    says: /--width.*'12mm'/,
  },
  { when: 'a size is no number', words: dress('block.svg', '--repeat', 'abc'), says: /--repeat.*'abc'/ },
  {
    when: 'satin is to be wider than any cloth draws in',
    words: dress('block.svg', '--pull', '2'),
    says: /--pull: 2 is out of range; give millimeters from 0 to 0\.6/,
  },
  {
    when: 'rows are to be as heavy as no known thread',
    words: dress('block.svg', '--heavy', 'wool'),
    says: /--heavy: 'wool' is no choice; choose one-strand, two-strands, pearl-8, pearl-5/,
  },
  { when: 'a size is NaN', words: dress('block.svg', '--gap', 'NaN'), says: /--gap.*'NaN'/ },
  {
    when: 'a size is infinite',
    words: dress('block.svg', '--width', 'Infinity'),
    says: /--width.*'Infinity'/,
  },
  { when: 'a size is too large', words: dress('block.svg', '--width', '4000'), says: /--width.*4000.*range/ },
  { when: 'a size is negative', words: dress('block.svg', '--repeat', '-3'), says: /--repeat.*-3/ },
  { when: 'a list is no list', words: dress('block.svg', '--seam', '1,x'), says: /--seam.*'1,x'/ },
  { when: 'a list counts down', words: dress('block.svg', '--seam', '6-4'), says: /--seam.*6-4/ },
  { when: 'a seam does not exist', words: dress('block.svg', '--seam', '7'), says: /seam.*7/ },
  {
    when: 'a manner is none',
    words: dress('block.svg', '--ends', 'knot'),
    says: /--ends.*'knot'.*tuck, bevel/,
  },
  {
    when: 'an option does not exist',
    words: dress('block.svg', '--outt', 'x.dst'),
    says: /--outt.*did you mean --out/i,
  },
  { when: 'a command does not exist', words: ['dres', 'block.svg'], says: /dres.*did you mean dress/i },
  {
    when: 'help is wished for a command that does not exist',
    words: ['help', 'dres'],
    says: /unknown command 'dres'; did you mean dress\?/,
  },
  {
    when: 'help is wished for a command of the library that does not exist',
    words: ['help', 'library', 'cop'],
    says: /unknown command 'cop'; did you mean copy\?/,
  },
  {
    when: 'a command is given too much',
    words: dress('block.svg', 'red'),
    says: /too many arguments.*; seamwright dress --help shows the way/,
  },
  {
    when: 'a command of the library is given nothing',
    words: ['library', 'copy'],
    says: /missing.*'name'; seamwright library copy --help shows the way/,
  },
  {
    when: 'nothing is asked of the library',
    words: ['library'],
    says: /no command given; seamwright library --help lists them/,
  },
  { when: 'nothing is asked for', words: [], says: /no command given; seamwright --help lists them/ },
  {
    when: 'the folder of an output is not there',
    words: dress('block.svg', '--out', 'away/x.dst'),
    says: /away/,
  },
  { when: 'an output is a folder', words: dress('block.svg', '--out', 'folder.svg'), says: /folder\.svg/ },
  {
    when: 'an output is of a kind that is not made',
    words: dress('block.svg', '--out', 'x.gif'),
    says: /x\.gif.*\.dst/,
  },
  { when: 'an output is the input', words: dress('block.svg', '--out', 'block.svg'), says: /is the input/ },
  {
    when: 'an output is the input by another path',
    words: dress('block.svg', '--out', 'folder/../block.svg'),
    says: /is the input/,
  },
  {
    when: 'an output is the input through a link',
    words: dress('block.svg', '--out', 'link.svg'),
    says: /is the input/,
  },
  {
    when: 'an output is the input by a hard link',
    words: dress('block.svg', '--out', 'twin.svg'),
    says: /is the input/,
  },
  {
    when: 'two outputs are one file',
    words: dress('block.svg', '--out', 'x.svg', './x.svg'),
    says: /same file/,
  },
  {
    when: 'a good output stands beside a bad one',
    words: dress('block.svg', '--out', 'x.dst', 'away/x.svg'),
    says: /away/,
  },
  {
    when: 'an option that holds one value is given twice',
    words: dress('block.svg', '--width', '6', '--width', '7'),
    says: /--width: is given twice/,
  },
  {
    when: 'a stitch has no name',
    words: dress('block.svg', '--stitch', ''),
    says: /--stitch: is given no name/,
  },
  {
    when: 'a color is none',
    words: dress('block.svg', '--thread', 'oldish'),
    says: /--thread: 'oldish' is no color/,
  },
  ...['1=calico.gif,wide:80', '1=calico.gif', '1=cloths/calico.webp', '1=navy,calico.BMP'].map(
    (fabric, k) => ({
      when: `the picture of a fabric is of a kind that is not read (${k + 1})`,
      words: dress('patches.svg', '--fabric', fabric),
      says: /--fabric 1=.*calico\.\w+' does not end in \.png, .*; give a PNG or JPEG picture/,
    }),
  ),
  ...[
    ['2=navy', '2=red'],
    ['1-3=navy', '--fabric', '2=red'],
  ].map((fabrics, k) => ({
    when: `a patch is given two fabrics (${k + 1})`,
    words: dress('patches.svg', '--fabric', ...fabrics),
    says: /--fabric 2=red: patch 2 is given a fabric twice; give it one/,
  })),
  {
    when: 'a size is out of the range of the stitch',
    words: dress('block.svg', '--stitch', 'feather', '--width', '39'),
    says: /feather width: 39 mm is out of range/,
  },
  {
    when: 'a dressing names a stitch that does not exist',
    words: dress('lost.dressing.json', '--out', 'x.dst'),
    says: /lost\.dressing\.json line 1, treatment 1 row 1: there is no stitch "fether".*"feather"/,
  },
  {
    when: 'a dressing has treatments without end',
    words: dress('many.dressing.json'),
    says: /many\.dressing\.json: it has 20001 treatments/,
  },
  {
    when: 'the seams of a dressing are asked for',
    words: ['seams', 'lost.dressing.json'],
    says: /give the block itself/,
  },
  {
    when: 'a name holds a control character',
    words: ['seams', 'a\u0007b.svg'],
    says: /a\ufffdb\.svg.*does not exist/,
  },
  {
    when: 'a mistake stands deep in a dressing',
    words: dress('laid-out.dressing.json'),
    // counted by hand: the block takes 6 lines, what stands around it 7, treatment and seam 6, rows 1, then the row
    says: /laid-out\.dressing\.json line 21, treatment 1 row 1: .*"fether"/,
  },
  {
    when: 'a dressing makes the same slip again and again',
    words: dress('ornaments.dressing.json'),
    says: /line 1, ornament 1: there is no ornament "rozebud" \(and 299 more like it\); .*"rosebud"/,
  },
  {
    when: 'a dressing has ornaments without end',
    words: dress('endless-ornaments.dressing.json'),
    says: /endless-ornaments\.dressing\.json: it has 1001 ornaments/,
  },
  {
    when: 'the block of a dressing is not there',
    words: dress('no-block.dressing.json'),
    says: /no-block\.dressing\.json line 1, block .*away\.svg: does not exist/,
  },
  {
    when: 'the block of a dressing has a zero byte in its name',
    words: dress('zero-byte.dressing.json'),
    says: /zero-byte\.dressing\.json line 1, block file name: holds a character/,
  },
  {
    when: 'the drawing that a dressing holds is broken',
    words: dress('held.dressing.json'),
    says: /^seamwright: held\.dressing\.json line 1, the drawing in it line 2 \(path\): its path data has "X"/,
  },
  {
    when: 'a dressing names stops of a drawing',
    words: dress('stops.dressing.json'),
    says: /stops\.dressing\.json line 1, block\.stops: block\.svg is a drawing/,
  },
  {
    when: 'a dressing names no stops of a stitch file',
    words: dress('no-stops.dressing.json'),
    says: /no-stops\.dressing\.json line 1, block\.stops: two-stops\.dst is a stitch file/,
  },
  { when: 'an output has no name', words: dress('block.svg', '--out', ''), says: /--out: is given no name/ },
  {
    when: 'an outline stitch has no name',
    words: dress('block.svg', '--edge', ' '),
    says: /--edge: is given no/,
  },
  {
    when: 'a list is given twice',
    words: dress('block.svg', '--seam', '1', '--seam', '1'),
    says: /--seam: .*twice/,
  },
  {
    when: 'an output is a link in a circle',
    words: dress('block.svg', '--out', 'circle.svg'),
    says: /--out circle\.svg: is a link that leads in a circle/,
  },
  {
    when: 'an output has a name longer than a name can be',
    words: dress('block.svg', '--out', `${'x'.repeat(300)}.svg`),
    says: /--out x+\.\.\.x+\.svg: the name is too long/,
  },
  { when: 'a drawing is in UTF-32', words: dress('utf-32.svg'), says: /utf-32\.svg: .*save it as UTF-8/ },
  ...[
    dress('block.svg', '--stitch', 'x'.repeat(5000)),
    dress('block.svg', '--stitch', longName),
    dress('block.svg', '--ends', longName),
    dress('block.svg', '--width', longName),
    dress(longName),
    dress('long.dressing.json'),
    [longName],
  ].map((words, k) => ({ when: `a name never ends (${k + 1})`, words, says: /^seamwright: .{0,350}\n$/ })),
  {
    when: 'a library is not there',
    words: dress('block.svg', '--library', 'nowhere'),
    says: /--library nowhere: there is no such folder/,
  },
  {
    when: 'a picture of the seams replaces its block',
    words: ['seams', 'block.svg', '--out', 'block.svg'],
    says: /is the input/,
  },
];

const folder = newFolder();
beforeAll(() => {
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
  mkdirSync(join(folder, 'folder'));
  mkdirSync(join(folder, 'folder.svg'));
  symlinkSync(join(folder, 'block.svg'), join(folder, 'link.svg'));
  symlinkSync(join(folder, 'circle.svg'), join(folder, 'circle.svg'));
  linkSync(join(folder, 'block.svg'), join(folder, 'twin.svg'));
});
afterAll(() => removeFolder(folder));

describe.concurrent('bad input gets one clear line, status 2, and leaves every file as it was', () => {
  it.each(cases)(
    'when $when',
    async ({ words, says }) => {
      const before = contents(folder);
      const { status, stdout, stderr } = await seamwright(folder, ...words);
      expect(stderr).toMatch(says);
      expect(stderr).toMatch(/^seamwright: [^\n]+: [^\n]+; [^\n]+\n$/);
      expect(stderr).not.toMatch(/\bat .*:\d+:\d+|fault of the program/);
      expect(stdout).toBe('');
      expect(status).toBe(2);
      expect(contents(folder)).toEqual(before);
    },
    30_000,
  );
});
