import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDressing } from '../../src/formats/dressing-file.js';
import { dressingSchemaText } from '../../src/formats/dressing-schema.js';
import { writeDressing } from '../../src/formats/dressing-text.js';
import { apron } from './dressings.js';

const published = readFileSync(new URL('../../motifs/dressing.schema.json', import.meta.url), 'utf8');

describe('the published schema of dressings', () => {
  it('is the one that dressings are read by (npx tsx tests/stitches/write-schema.ts writes it)', () => {
    expect(published).toBe(dressingSchemaText());
  });

  it('knows every key of a dressing, and says of every value what it should be', () => {
    const schema = JSON.parse(published);
    expect(Object.keys(apron).filter((key) => !(key in schema.properties))).toEqual([]);
    const bare: string[] = [];
    const look = (value: unknown, path: string) => {
      if (typeof value !== 'object' || value === null) return;
      const { properties } = value as { properties?: Record<string, { description?: string }> };
      for (const [key, one] of Object.entries(properties ?? {})) {
        if (!one.description) bare.push(`${path}.${key}`);
      }
      for (const [key, one] of Object.entries(value)) look(one, `${path}.${key}`);
    };
    look(schema, '');
    expect(bare).toEqual([]);
  });

  it('can be named in a dressing, for editors', async () => {
    const text = JSON.stringify({ $schema: '../motifs/dressing.schema.json', ...apron });
    const dressing = await readDressing(text, 'apron.dressing.json');
    expect(writeDressing(dressing)).toBe(writeDressing(apron));
  });
});
