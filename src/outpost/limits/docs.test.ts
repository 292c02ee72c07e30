// docs/limit-sets.md leaves out no key and no word of the schema, and its table counts the sets that ship.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { limitSetJsonSchema } from './limit-set-schema.ts';
import { readLimitSet } from './read-limit-set.ts';

const ROOT = join(import.meta.dirname, '../../..');
const page = readFileSync(join(ROOT, 'docs/limit-sets.md'), 'utf8');

test('every key and every word of the schema is on the page', () => {
  const words = new Set<string>();
  const walk = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    const { enum: list } = node as { enum?: string[] };
    for (const word of list ?? []) words.add(word);
    for (const [key, inner] of Object.entries(node)) {
      if (key === 'properties') for (const name of Object.keys(inner as object)) words.add(name);
      walk(inner);
    }
  };
  walk(limitSetJsonSchema());
  expect(words.size).toBeGreaterThan(60);
  expect([...words].filter((word) => !page.includes(`\`${word}\``) && !page.includes(`${word}: `))).toEqual(
    [],
  );
});

test('the table has every set with its rows and how many are in force', () => {
  const counted = readdirSync(join(ROOT, 'limits')).map((name) => {
    const read = readLimitSet(readFileSync(join(ROOT, 'limits', name), 'utf8'), { file: name });
    if (!read.ok) throw new Error(name);
    const on = read.set.rows.filter(({ limit }) => limit !== null).length;
    return [name, `${read.set.rows.length} | ${on}`];
  });
  const shown = [...page.matchAll(/^\| `(\S+\.yaml)` \| .* \| (\d+ \| \d+) \|$/gm)].map(
    ([, ...cells]) => cells,
  );
  expect(shown.sort()).toEqual(counted.sort());
});
