// A key counts as repeated within its own object only, however it is spelt.
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { repeatedKey } from './repeated-key.ts';

test.each([
  ['{"a":1,"a":2}', 'a'],
  ['{"a":1,"\\u0061":2}', 'a'],
  ['{"a":{"b":1,"c":[{"b":1,"b":2}]}}', 'b'],
  ['{"a":"}","b":"{\\"","a":1}', 'a'],
  ['{"":1,"":2}', ''],
  ['{"a\\\\":1,"a\\\\":2}', 'a\\'],
])('%s repeats %s', (text, key) => {
  expect(repeatedKey(text)).toBe(key);
});

test.each([
  '{"a":{"a":1},"b":{"a":2}}',
  '[{"a":1},{"a":2}]',
  '{"a":["a","a"],"b":"a"}',
  '{"a":"\\"a\\":","b":1}',
  '[]',
])('%s repeats nothing', (text) => {
  expect(repeatedKey(text)).toBeNull();
});

test('what JSON writes itself never repeats a key', () => {
  const silent = fc.property(fc.json(), (text) => {
    expect(repeatedKey(text)).toBeNull();
  });
  fc.assert(silent, { numRuns: 500 });
});
