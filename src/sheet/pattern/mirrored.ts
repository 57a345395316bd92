import type { Points } from '../../geometry/polyline.js';
import type { Pattern } from './pattern.js';

/** The pattern with left and right exchanged within its frame. Labels go along with what they name and stay readable. */
export function mirrored(pattern: Pattern): Pattern {
  const { left, right } = pattern.frame;
  const turned = (points: Points) => points.map((value, i) => (i % 2 === 0 ? left + right - value : value));
  return {
    ...pattern,
    lines: pattern.lines.map(({ kind, points }) => ({ kind, points: turned(points) })),
    dots: turned(pattern.dots),
    labels: pattern.labels.map((label) => ({ ...label, at: [left + right - label.at[0], label.at[1]] })),
    mirrored: !pattern.mirrored,
  };
}
