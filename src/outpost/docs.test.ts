// docs/outpost-file.md shows what Corrie's file says and leaves out no key.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { outpostJsonSchema } from './json-schema.ts';

const ROOT = join(import.meta.dirname, '../..');
const page = readFileSync(join(ROOT, 'docs/outpost-file.md'), 'utf8');
const corrie = readFileSync(join(ROOT, 'examples/corrie/outpost.yaml'), 'utf8');

test('every sample on the page stands in the file of Corrie', () => {
  const samples = [...page.matchAll(/```yaml\n(.*?)```/gs)].map(([, sample]) => sample ?? '');
  expect(samples.length).toBeGreaterThan(12);
  expect(samples.filter((sample) => !corrie.includes(sample))).toEqual([]);
});

test('every key of the schema is on the page', () => {
  const keys = new Set<string>();
  const walk = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    for (const [key, inner] of Object.entries(node)) {
      if (key === 'properties') for (const name of Object.keys(inner as object)) keys.add(name);
      walk(inner);
    }
  };
  walk(outpostJsonSchema());
  expect(keys.size).toBeGreaterThan(200);
  const headings = [...page.matchAll(/^## (.*)$/gm)].flatMap(([, heading]) => (heading ?? '').split(', '));
  const shown = new Set([
    ...headings,
    ...[...page.matchAll(/`([A-Za-z0-9]+)`|([A-Za-z0-9]+):/g)].map(([, word, key]) => word ?? key),
  ]);
  expect([...keys].filter((key) => !shown.has(key))).toEqual([]);
});

test('every list of words is on the page', () => {
  const words = new Set<string>();
  const walk = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    const { enum: list } = node as { enum?: string[] };
    for (const word of list ?? []) words.add(word);
    Object.values(node).forEach(walk);
  };
  walk(outpostJsonSchema());
  expect(words.size).toBeGreaterThan(50);
  expect([...words].filter((word) => !page.includes(`\`${word}\``))).toEqual([]);
});
