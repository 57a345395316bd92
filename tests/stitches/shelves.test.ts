import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { sampleBlock } from '../../src/draw/swatch.js';
import { dress, marksOf } from '../../src/dress.js';
import { checkTreatmentFile, readTreatment } from '../../src/formats/treatment-file.js';
import { treatmentSchemaText } from '../../src/formats/treatment-schema.js';
import { defaultDressing } from '../../src/plan.js';
import { checkOrnamentFile, readOrnament } from '../../src/stitches/check.js';
import { parseOrnament } from '../../src/stitches/parse.js';
import { builtIn, ornamentFiles, treatmentFiles } from './dictionary.js';

describe('built-in ornaments', () => {
  test('hold those that crazy patchwork is known for', () => {
    for (const name of [
      'daisy',
      'rosebud',
      'bullion-rose',
      'woven-spoke-rose',
      'spider-web',
      'fan',
      'leaf-spray',
      'star-web',
    ]) {
      expect([...builtIn.ornaments.keys()]).toContain(name);
    }
  });

  test.each(ornamentFiles)('$name is sound, and names where it was learned', async ({ name, text }) => {
    expect((await checkOrnamentFile(text, name)).map(({ message }) => message)).toEqual([]);
    expect(JSON.parse(text).sources.length).toBeGreaterThan(0);
    expect((await readOrnament(text, name)).build({})).toEqual(parseOrnament(text, name).build({}));
  });

  test.each(ornamentFiles)('$name is as large as asked', ({ name, text }) => {
    const ornament = parseOrnament(text, name);
    const { min, max } = ornament.parameters.find((parameter) => parameter.name === 'size')!;
    for (const size of [min, (min + max) / 2, max]) {
      const { legs } = ornament.build({ size });
      const xs = legs.flatMap(({ path, size: wide }) =>
        [...path].filter((_, i) => i % 2 === 0).flatMap((x) => [x - wide / 2, x + wide / 2]),
      );
      const ys = legs.flatMap(({ path, size: wide }) =>
        [...path].filter((_, i) => i % 2 === 1).flatMap((y) => [y - wide / 2, y + wide / 2]),
      );
      const extent = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
      // single petals are measured from the hole they stand on, as a needlewoman would; figures across
      expect(extent / size).toBeGreaterThan(0.8);
      expect(extent / size).toBeLessThan(1.8);
    }
  });
});

describe('built-in treatments', () => {
  test('are twenty or more, and their published schema is up to date', () => {
    expect(treatmentFiles.length).toBeGreaterThanOrEqual(20);
    const published = readFileSync(new URL('../../motifs/treatment.schema.json', import.meta.url), 'utf8');
    expect(published).toBe(treatmentSchemaText());
  });

  test.each(treatmentFiles)(
    '$name is sound and can be worked, every thread a stop of its own',
    async ({ name, text }) => {
      expect((await checkTreatmentFile(text, name)).map(({ message }) => message)).toEqual([]);
      const treatment = await readTreatment(text, name);
      const source = { file: 'sample', stops: null, snap: 0.3, through: [] };
      const block = await sampleBlock('sample', source);
      const dressed = dress(
        block,
        defaultDressing(block.map, { source, dictionary: builtIn, treatment }),
        builtIn,
      );
      expect(dressed.findings.filter(({ level }) => level === 'error')).toEqual([]);
      const sewnAccents = (treatment.accents ?? []).filter(({ ornament }) => ornament !== null);
      const threads =
        treatment.rows.reduce((sum, { stitch }) => sum + builtIn.stitches.get(stitch)!.threads.length, 0) +
        sewnAccents.reduce((sum, { ornament }) => sum + builtIn.ornaments.get(ornament!)!.threads.length, 0) +
        (treatment.laid ? 1 : 0);
      expect(dressed.design.stops).toHaveLength(3 * threads);
      // accents lie on top of all rows
      const kinds = dressed.design.stops.map(({ kind }) => kind);
      expect(kinds.lastIndexOf('treatment')).toBeLessThan(
        kinds.includes('accent') ? kinds.indexOf('accent') : kinds.length,
      );
      const byHand = (treatment.accents ?? []).some((accent) => accent.byHand);
      expect(marksOf(dressed).length > 0).toBe(byHand);
    },
  );
});
