// The JSON Schema in docs/ is the one that sets of limits are judged by; rewritten by `npm run golden`.
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { expectGolden } from '../../../tests/golden/record.ts';
import { limitSetJsonSchema } from './limit-set-schema.ts';

const DOCS = join(import.meta.dirname, '../../../docs');

test('docs/limit-set.schema.json is up to date', () => {
  expectGolden('limit-set.schema.json', `${JSON.stringify(limitSetJsonSchema(), null, 2)}\n`, DOCS);
});

test('a row needs source and locator, unit and basis', () => {
  const { properties } = limitSetJsonSchema() as { properties: { rows: { items: { required: string[] } } } };
  expect(properties.rows.items.required).toEqual(
    expect.arrayContaining(['source', 'locator', 'unit', 'basis', 'evidence', 'status', 'act']),
  );
});
