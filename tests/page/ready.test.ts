/// <reference types="vite/client" />
import { expect, it } from 'vitest';
import { demoFiles } from '../../page/core/demo.js';
import { deskOf } from '../../page/core/desk.js';
import { library, stitchText } from '../../page/core/library.js';
import type { Answer, Opened, Question } from '../../page/core/messages.js';
import { packed, unpacked } from '../../page/core/pack.js';
import { readBlock } from '../../page/core/read-block.js';
import type { Ready } from '../../page/core/ready.js';
import { readyText } from '../../page/core/ready-text.js';
import { strandsOf } from '../../src/draw/strands.js';
import { dress } from '../../src/dress.js';

const ready = unpacked<Ready>(readyText);
const desk = deskOf(library, stitchText);
const answerTo = async <T>(what: Question['what'], ask: unknown): Promise<T> => {
  const answer: Answer = await desk({ id: 1, what, ask });
  if ('complaint' in answer) throw new Error(answer.complaint.wrong);
  return answer.answer as T;
};

it('opens with what the core makes of the demo files: dressing, picture and shelf, number for number', async () => {
  const [file, beside] = demoFiles();
  const { dressing } = await answerTo<Opened>('open', { file, beside, seed: 1 });
  expect(ready.dressing).toEqual(dressing);
  expect(ready.picture).toEqual(await answerTo('dress', { dressing }));
  expect(ready.offers).toEqual(await answerTo('offers', null));
  expect(ready.figures).toEqual(await answerTo('figures', null));
});

it('shows thread within half a micrometer of where it lies', async () => {
  const { stops } = dress(await readBlock(ready.dressing.block, null), ready.dressing, library).design;
  const lie = stops.flatMap(({ runs }) => [...strandsOf(runs).xy]);
  const shown = ready.picture.stops.flatMap(({ xy }) => [...xy]);
  expect(shown.length).toBeGreaterThan(10_000);
  expect(shown.length).toBe(lie.length);
  expect(Math.max(...shown.map((value, i) => Math.abs(value - lie[i])))).toBeLessThan(0.000501);
});

it('packs points as they are, to the last digit, however far they lie from each other', () => {
  const record = {
    xy: Float64Array.of(0, -0.001, 1234.567, -9999.999, 0.001, 3),
    cuts: Int32Array.of(0, 4, -1),
    none: new Float64Array(0),
    name: 'ä "quoted"',
    deep: [{ points: Float64Array.of(1.5, 2) }],
  };
  expect(unpacked(packed(record))).toEqual(record);
});
