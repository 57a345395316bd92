import { channels, lightOf } from './light.js';

/** Thread that stands out this much from its fabric is seen, and this much is clear. Common practice. */
export const SEEN = 1.6;
export const CLEAR = 2.5;

/** How far two colors '#rrggbb' stand apart, 1 to 21: contrast ratio (Web Content Accessibility Guidelines 2.1). */
export function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

function luminance(hex: string): number {
  const [r, g, b] = channels(hex).map(lightOf);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
