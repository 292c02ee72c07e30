// The canonical form: one spelling for one value, whatever way the value was put together.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { canonicalJson, DEEPEST_NESTING, type Json } from './canonical.ts';

test('the order in which keys were written does not matter, and reading back gives the value', () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 6 }), (value) => {
      const text = canonicalJson(value as Json);
      const back = JSON.parse(text) as Json;
      expect(canonicalJson(back)).toBe(text);
      expect(canonicalJson(turned(back))).toBe(text);
    }),
    { numRuns: 500 },
  );
});

function turned(value: Json): Json {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map((each) => turned(each as Json));
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, each]) => [key, turned(each as Json)]),
  );
}

test('a key without a value is left out; null is a value', () => {
  expect(canonicalJson({ b: undefined, a: null })).toBe('{"a":null}');
});

test.each([
  ['NaN', Number.NaN],
  ['an infinity', -1 / 0],
  ['a lone surrogate', 'a\ud800'],
  ['a lone surrogate in a key', { '\udc00': 1 }],
  ['a big integer', 1n],
  ['a function', () => 1],
  ['nothing inside a list', [undefined]],
])('%s is refused', (_, value) => {
  expect(() => canonicalJson(value as Json)).toThrow(TypeError);
});

test('nesting is taken up to its limit and refused one deeper', () => {
  const nested = (depth: number): Json => (depth === 0 ? 1 : [nested(depth - 1)]);
  expect(canonicalJson(nested(DEEPEST_NESTING))).toBe(
    `${'['.repeat(DEEPEST_NESTING)}1${']'.repeat(DEEPEST_NESTING)}`,
  );
  expect(() => canonicalJson(nested(DEEPEST_NESTING + 1))).toThrow(TypeError);
});
