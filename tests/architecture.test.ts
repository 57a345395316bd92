import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, it } from 'vitest';

/** What may import what: a part may use itself and whatever stands before it. */
const order = [
  ['finding', 'input-error', 'progress'],
  ['geometry', 'color'],
  ['formats'],
  ['block', 'stitches'],
  ['fit'],
  ['needle'],
  ['design'],
  ['check'],
  ['asked'],
  ['harmony'],
  [
    'dress',
    'plan',
    'placed',
    'settings',
    'density-limits',
    'examine-dressed',
    'thread-look',
    'stash-threads',
    'sampler',
    'sampler-layout',
  ],
  ['draw', 'report'],
  ['sheet'],
  ['index'],
  ['cli', 'page'],
];
const rank = new Map(order.flatMap((parts, step) => parts.map((part) => [part, step] as const)));

interface Import {
  readonly file: string;
  readonly part: string;
  readonly target: string;
}

const root = join(import.meta.dirname, '..', 'src');
const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'));
const text = new Map(files.map((file) => [file, readFileSync(join(root, file), 'utf8')]));

const partOf = (file: string): string => file.split('/')[0].replace(/\.[jt]s$/, '');

function importsOf(file: string, source: string): Import[] {
  const found = source.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g);
  return [...found].map(([, target]) => ({ file, part: partOf(file), target }));
}

/** Why an import goes the wrong way, or null when it does not. */
function wrongWay({ file, part, target }: Import): string | null {
  if (!target.startsWith('.')) return null;
  const reached = partOf(posix.normalize(posix.join(posix.dirname(file), target)));
  const [from, to] = [rank.get(part), rank.get(reached)];
  if (from === undefined || to === undefined)
    return `${file}: no place is named for ${from === undefined ? part : reached}`;
  return to > from ? `${file} uses ${target}, which comes later` : null;
}

const imports = [...text].flatMap(([file, source]) => importsOf(file, source));
const belowCli = [...text].filter(([file]) => partOf(file) !== 'cli');

const pageRoot = join(import.meta.dirname, '..', 'page');
const pageFiles = readdirSync(pageRoot, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => /^(core|state|draw|parts)\/.*\.tsx?$/.test(file))
  .map((file) => ({ file, source: readFileSync(join(pageRoot, file), 'utf8') }));

describe('the page', () => {
  it('stands beside the command line and takes nothing of it, nor of the process', () => {
    const taken = pageFiles.flatMap(({ file, source }) => importsOf(file, source));
    expect(taken.length).toBeGreaterThan(100);
    expect(taken.filter(({ target }) => /\/src\/cli\/|^node:/.test(target))).toEqual([]);
  });

  it('shows the DOM to nothing that runs in its worker', () => {
    const core = pageFiles.filter(({ file }) => file.startsWith('core/'));
    expect(core.filter(({ source }) => /\bdocument\b|\bwindow\b|from 'preact/.test(code(source)))).toEqual(
      [],
    );
  });
});

describe('the tree', () => {
  it('imports run one way', () => {
    expect(imports.map(wrongWay).filter(Boolean)).toEqual([]);
  });

  it('would notice an import that runs back', () => {
    const [back] = importsOf('geometry/point.ts', "import { fit } from '../fit/fit.js';");
    expect(wrongWay(back)).toContain('comes later');
    const [lazy] = importsOf('fit/fit.ts', "await import('../cli/main.js')");
    expect(wrongWay(lazy)).toContain('comes later');
  });

  it('keeps files and the process to the command line, so that all else runs in a browser', () => {
    const outside = imports.filter(({ part, target }) => part !== 'cli' && target.startsWith('node:'));
    expect(outside).toEqual([]);
    const touching = belowCli.filter(([, source]) =>
      /\bprocess\.|\brequire\(|\bBuffer\b|__dirname/.test(code(source)),
    );
    expect(touching.map(([file]) => file)).toEqual([]);
  });

  it('has no clock and no unseeded chance below the command line: the same input gives the same bytes', () => {
    const chancy =
      /\bDate\b|\bMath\.random\b|\bperformance\b|\bcrypto\b|\.toLocale|\blocaleCompare\b|\bIntl\b/;
    expect(belowCli.filter(([, source]) => chancy.test(code(source))).map(([file]) => file)).toEqual([]);
  });

  it('loads what is slow to load only where it is used', () => {
    const slow = imports.filter(({ target }) =>
      /^(paper|culori|@sinclair\/typebox|@resvg|fast-png|jpeg-js|papaparse|@cantoo\/pdf-lib)/.test(target),
    );
    const atTop = slow.filter(({ file, target }) =>
      new RegExp(`^(import|export)\\s(?!type)[^;]*'${target}`, 'm').test(text.get(file)!),
    );
    expect(atTop.filter(({ file }) => eager(file)).map(({ file, target }) => `${file}: ${target}`)).toEqual(
      [],
    );
  });
});

/** Source without its comments. */
function code(source: string): string {
  return source.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
}

/** Whether a file is loaded with the command line itself: followed along plain imports from main.ts and the main job. */
function eager(file: string): boolean {
  return reachable.has(file);
}

const reachable = new Set<string>();
const waiting = ['cli/main.ts', 'cli/dress-from-file.ts'];
while (waiting.length) {
  const file = waiting.pop()!;
  if (reachable.has(file) || !text.has(file)) continue;
  reachable.add(file);
  const plain = [...text.get(file)!.matchAll(/^(?:import|export)\s(?!type\s)[^;]*?from '(\.[^']+)'/gm)];
  for (const [, target] of plain) {
    waiting.push(posix.normalize(posix.join(posix.dirname(file), target)).replace(/\.js$/, '.ts'));
  }
}
