/** Light of a channel's value, 0 to 255, as a share of the most (IEC 61966-2-1). */
export const lightOf = (value: number): number => LIGHT[value];

const LIGHT = Float64Array.from({ length: 256 }, (_, value) => {
  const share = value / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
});

/** The other way: the value nearest to a light from 0 to 1. */
export const channelValue = (light: number): number =>
  Math.round(255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055));

/** Red, green and blue of '#rrggbb', 0 to 255. */
export const channels = (hex: string): number[] =>
  [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

/** '#rrggbb' of red, green and blue, 0 to 255. */
export const hexOfChannels = (values: readonly number[]): string =>
  `#${values.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
