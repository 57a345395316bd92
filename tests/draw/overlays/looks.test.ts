import {
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  type Rgb,
  rgb,
  wcagLuminance,
} from 'culori';
import { describe, expect, test } from 'vitest';
import { LIMITS } from '../../../src/check/density/limits.js';
import { heatScale } from '../../../src/draw/overlays/heat-scale.js';
import { stopLook } from '../../../src/draw/overlays/stop-looks.js';

/** As eyes see that lack one kind of cone (Machado, Oliveira and Fernandes, 2009, as culori has it). */
const EYES: readonly ((hex: string) => Rgb)[] = [
  inRgb,
  ...[filterDeficiencyProt(1), filterDeficiencyDeuter(1), filterDeficiencyTrit(1)].map(
    (lacking) => (hex: string) => lacking(inRgb(hex)) as Rgb,
  ),
];
const differ = differenceCiede2000();

function inRgb(hex: string): Rgb {
  return rgb(hex)!;
}

describe('the scale of density', () => {
  const scales = [
    LIMITS.firm.holes,
    LIMITS.firm.layers,
    { warning: 2, error: 2.5 },
    { warning: 40, error: 90 },
  ];

  test('has bounds where a warning and an error begin, and says so by more than color', () => {
    for (const limit of scales) {
      const scale = heatScale(limit);
      expect(scale[0].above).toBe(0);
      expect(scale.find(({ grade }) => grade === 'warning')?.above).toBe(limit.warning);
      expect(scale.filter(({ grade }) => grade === 'error').map(({ above }) => above)).toEqual([limit.error]);
    }
  });

  test('gets darker with every step, to eyes of every kind', () => {
    for (const limit of scales) {
      for (const seen of EYES) {
        const light = heatScale(limit).map(({ hex }) => wcagLuminance(seen(hex)));
        expect(light.filter((value, i) => i > 0 && value >= light[i - 1])).toEqual([]);
      }
    }
  });
});

describe('the looks of color stops', () => {
  const looks = Array.from({ length: 35 }, (_, stop) => stopLook(stop));
  const colors = looks.map(({ stroke }) => String(stroke));

  test('of two of 35 stops differ in dashes, or in color to eyes of every kind', () => {
    const alike = looks.flatMap((one, i) =>
      looks
        .slice(i + 1)
        .map((other, k) => [one, other, colors[i], colors[i + 1 + k]] as const)
        .filter(([a, b]) => a['stroke-dasharray'] === b['stroke-dasharray'])
        .filter(([, , a, b]) => EYES.some((seen) => differ(seen(a), seen(b)) < 8)),
    );
    expect(alike).toEqual([]);
  });

  test('of stops that follow each other differ in both', () => {
    const alike = looks
      .slice(1)
      .filter(
        (one, i) =>
          one['stroke-dasharray'] === looks[i]['stroke-dasharray'] ||
          EYES.some((seen) => differ(seen(colors[i]), seen(colors[i + 1])) < 8),
      );
    expect(alike).toEqual([]);
  });
});
