import { describe, expect, test } from 'vitest';
import type { Chain, Layer } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { threadsByClass } from '../../src/fit/one-thread.js';
import { dictionary, stitchNamed } from '../stitches/dictionary.js';
import { askFor } from './asks.js';
import { mapOfLines } from './block-of-lines.js';

const RULES = { gap: 0.6, outline: 'free' } as const;
const inThreads = dictionary.filter(({ threads }) => threads.length > 1);
const ring = Array.from({ length: 361 }, (_, i) => {
  const t = (2 * Math.PI * (i % 360)) / 360;
  return [100 + 30 * Math.cos(t), 100 + 30 * Math.sin(t)] as const;
});
const LINES = {
  straight: [
    [30, 100],
    [130, 100],
  ],
  // gentle enough that none breaks there
  corner: [
    [30, 100],
    [100, 100],
    [145, 145],
  ],
  ring,
} as const;

const layersOf = (stitch: string, line: keyof typeof LINES): readonly Layer[] =>
  fitLines(mapOfLines([LINES[line]]), [askFor(1, stitch)], RULES)[0].fit.layers;

describe.each(inThreads.map(({ name }) => name))('%s, a stitch in several threads', (name) => {
  const stitch = stitchNamed(name);
  const threads = threadsByClass(stitch.build({}));

  test.each(Object.keys(LINES) as (keyof typeof LINES)[])('gives one layer a thread, %s', (line) => {
    const layers = layersOf(name, line);
    expect(layers.map(({ kind, index, thread }) => [kind, index, thread])).toEqual(
      stitch.threads.map((_, thread) => ['row', 0, thread]),
    );
    for (const { chains, thread } of layers) {
      expect(new Set(chains.flatMap(({ legClass }) => [...legClass].map((own) => threads[own])))).toEqual(
        new Set([thread]),
      );
    }
  });

  test.each(Object.keys(LINES) as (keyof typeof LINES)[])('holds every leg in just one layer, %s', (line) => {
    const layers = layersOf(name, line);
    const chains = layers.flatMap((layer) => layer.chains);
    const { units, closed } = chains[0];
    const { legs, closing, ending } = stitch.build({});
    const wanted = closed ? [] : [...closing.map((i) => legs[i]), ...ending];
    expect(chains.flatMap(legKeys).sort()).toEqual(
      [
        ...Array.from({ length: units }, (_, unit) => legs.map((leg) => `${unit}/${leg.class}`)).flat(),
        // what closes a row counts as its last unit's
        ...wanted.map((leg) => `${units - 1}/${leg.class}`),
      ].sort(),
    );
  });

  test.each(Object.keys(LINES) as (keyof typeof LINES)[])('keeps every thread in one piece, %s', (line) => {
    const pieces = layersOf(name, line).flatMap(({ chains }) => chains.map(piecesOf));
    expect(pieces).toEqual(pieces.map(() => 1));
  });
});

const legKeys = ({ unit, legClass }: Chain): string[] =>
  [...unit.keys()].map((leg) => `${unit[leg]}/${legClass[leg]}`);

/** How many pieces of a chain hang together by shared holes. */
function piecesOf({ nodes, from, to }: Chain): number {
  const parent = Array.from({ length: nodes.length / 2 }, (_, i) => i);
  const root = (node: number): number => {
    let top = node;
    while (parent[top] !== top) top = parent[top];
    return top;
  };
  for (const leg of from.keys()) parent[root(from[leg])] = root(to[leg]);
  return new Set([...from].map(root)).size;
}
