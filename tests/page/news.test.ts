/// <reference types="vite/client" />
import { isDeepStrictEqual } from 'node:util';
import { expect, it } from 'vitest';
import type { Picture } from '../../page/core/messages.js';
import { keysOf, newsOf, withNews } from '../../page/core/news.js';
import { unpacked } from '../../page/core/pack.js';
import type { Ready } from '../../page/core/ready.js';
import { readyText } from '../../page/core/ready-text.js';

const { picture } = unpacked<Ready>(readyText);
const [first, second, ...others] = picture.stops;
const wider = { ...second, key: 'wider', xy: second.xy.map((value) => 1.01 * value) };

/** As it comes from the worker. */
const sent = <T>(record: T): T => structuredClone(record);

it('what the page lacks and what it has make the whole picture, whatever changed', () => {
  const ways: [string, Picture][] = [
    ['nothing', picture],
    ['one thread', { ...picture, stops: [first, wider, ...others] }],
    ['a stop more', { ...picture, stops: [first, second, wider, ...others] }],
    ['a stop less', { ...picture, stops: others }],
    ['the order', { ...picture, stops: [...others, second, first] }],
    ['a title', { ...picture, stops: [{ ...first, title: 'called otherwise' }, second, ...others] }],
    ['the cloth', { ...picture, block: { ...picture.block, key: 'another', width: 7 } }],
  ];
  const wrong = ways.filter(([, next]) => {
    const made = withNews(picture, sent(newsOf(next, keysOf(picture))));
    return !isDeepStrictEqual(made, next);
  });
  expect(wrong.map(([what]) => what)).toEqual([]);
});

it('is all of a picture to a page that has none', () => {
  expect(withNews(null, sent(newsOf(picture, [])))).toEqual(picture);
});

it('sends no thread that the page has, and leaves it the very same', () => {
  const news = sent(newsOf({ ...picture, stops: [first, wider, ...others] }, keysOf(picture)));
  expect(news.block).toBe(null);
  expect(news.stops.filter((stop) => 'xy' in stop).map(({ key }) => key)).toEqual(['wider']);
  const made = withNews(picture, news);
  expect(made.stops[0]).toBe(first);
  expect(made.block).toBe(picture.block);
});
