import { readFileSync } from 'node:fs';
import { Value } from '@sinclair/typebox/value';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { needlePoints } from '../../src/design/needle-points.js';
import { needlePointsSchema, needlePointsSchemaText } from '../../src/formats/needle-points-schema.js';
import { designArbitrary, designOf } from '../design/designs.js';

describe('the published schema of needle points', () => {
  it('is the one in motifs (npx tsx tests/stitches/write-schema.ts writes it)', () => {
    const published = new URL('../../motifs/needle-points.schema.json', import.meta.url);
    expect(readFileSync(published, 'utf8')).toBe(needlePointsSchemaText());
  });

  it('holds for the needle points of every design, and not for anything else', () => {
    fc.assert(
      fc.property(designArbitrary, ({ runs, origin }) => {
        const points = JSON.parse(needlePoints(designOf(runs, origin)));
        expect([...Value.Errors(needlePointsSchema, points)]).toEqual([]);
        expect(Value.Check(needlePointsSchema, { ...points, units: 'mm' })).toBe(false);
        expect(Value.Check(needlePointsSchema, { ...points, stops: [{}] })).toBe(false);
      }),
    );
  });
});
