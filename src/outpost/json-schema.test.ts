// The JSON Schema in docs/ is the one that the reader judges by; rewritten by `npm run golden`.
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { expectGolden } from '../../tests/golden/record.ts';
import { outpostJsonSchema } from './json-schema.ts';

const DOCS = join(import.meta.dirname, '../../docs');

test('docs/outpost-file.schema.json is up to date', () => {
  expectGolden('outpost-file.schema.json', `${JSON.stringify(outpostJsonSchema(), null, 2)}\n`, DOCS);
});

test('unknown keys are refused at every level, and defaults need not be written', () => {
  const objects: Record<string, unknown>[] = [];
  const walk = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    const keys = node as Record<string, unknown>;
    if (keys['type'] === 'object' && keys['properties'] !== undefined) objects.push(keys);
    for (const inner of Object.values(keys)) walk(inner);
  };
  walk(outpostJsonSchema());
  expect(objects.length).toBeGreaterThan(50);
  for (const each of objects) expect(each['additionalProperties']).toBe(false);
  expect(outpostJsonSchema()['required']).toEqual(
    expect.arrayContaining(['format', 'version', 'outpost', 'stores', 'policy']),
  );
  expect(outpostJsonSchema()['required']).not.toContain('visits');
});
