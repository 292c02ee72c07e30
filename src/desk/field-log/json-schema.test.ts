// The JSON Schema in docs/ is the one that the reader judges by; rewritten by `npm run golden`.
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { expectGolden } from '../../../tests/golden/record.ts';
import { fieldLogJsonSchema } from './json-schema.ts';
import { lineShapes } from './shape/line-shapes.ts';

const DOCS = join(import.meta.dirname, '../../../docs');

test('docs/field-log.schema.json is up to date', () => {
  expectGolden('field-log.schema.json', `${JSON.stringify(fieldLogJsonSchema(), null, 2)}\n`, DOCS);
});

test('every kind has its shape, and unknown fields are refused at every level', () => {
  const objects: Record<string, unknown>[] = [];
  const walk = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    const keys = node as Record<string, unknown>;
    if (keys['type'] === 'object' && keys['properties'] !== undefined) objects.push(keys);
    for (const inner of Object.values(keys)) walk(inner);
  };
  const schema = fieldLogJsonSchema();
  walk(schema);
  expect(Object.keys(schema['$defs'] as object)).toEqual(Object.keys(lineShapes()));
  expect(objects.length).toBeGreaterThan(34);
  for (const each of objects) expect(each['additionalProperties']).toBe(false);
});

test('what is optional and what may be null is told apart', () => {
  const { daily, weigh } = fieldLogJsonSchema()['$defs'] as Record<string, Record<string, unknown>>;
  expect(daily?.['required']).toContain('dispenser_strokes');
  expect(daily?.['properties']).toMatchObject({
    dispenser_strokes: { anyOf: [{ type: 'integer' }, { type: 'null' }] },
  });
  expect(weigh?.['required']).toContain('litres');
  expect(weigh?.['required']).not.toContain('sd_L');
});
