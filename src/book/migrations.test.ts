// An older shape is read as today's, step by step; a missing step and a newer shape are said.
import { expect, test } from 'vitest';
import type { AnyEntry } from './entry.ts';
import { kindNames, kindVersion } from './kinds/index.ts';
import { type Migration, MigrationMissing, migrated, migrations } from './migrations.ts';

const note = (version: number, body: Record<string, unknown>): AnyEntry =>
  ({
    id: '00000000-0000-7000-8000-000000000000',
    site: 'corrie',
    number: 1,
    version,
    kind: 'note',
    happenedAtMs: 0,
    happenedOffsetMin: 0,
    enteredAtMs: 0,
    enteredOffsetMin: 0,
    by: 'keeper',
    body,
  }) as unknown as AnyEntry;

const steps: readonly Migration[] = [
  {
    name: 'words become text',
    kind: 'note',
    from: 1,
    change: ({ words, ...rest }) => ({ ...rest, text: words }),
  },
  { name: 'about gets a default', kind: 'note', from: 2, change: (body) => ({ about: 'water', ...body }) },
];
const three = () => 3;

test('an entry of two shapes ago takes both steps, and the kept one stays as it is', () => {
  const old = note(1, { words: 'tastes of metal' });
  const read = migrated(old, steps, three);
  expect(read.version).toBe(3);
  expect(read.body).toEqual({ about: 'water', text: 'tastes of metal' });
  expect(old.version).toBe(1);
  expect(old.body).toEqual({ words: 'tastes of metal' });
});

test('an entry of today is given back as the same object', () => {
  const today = note(3, { text: 'clear' });
  expect(migrated(today, steps, three)).toBe(today);
});

test('a missing step and a newer shape are said by name', () => {
  expect(() => migrated(note(1, {}), steps.slice(1), three)).toThrow(MigrationMissing);
  expect(() => migrated(note(1, {}), steps.slice(1), three)).toThrow('note 1 to 2');
  expect(() => migrated(note(4, {}), steps, three)).toThrow('newer than this program');
});

test('the steps of the program lead without a gap from 1 to the version of today, for every kind', () => {
  for (const kind of kindNames) {
    const from = migrations.filter((step) => step.kind === kind).map((step) => step.from);
    const wanted = Array.from({ length: kindVersion(kind) - 1 }, (_none, k) => k + 1);
    expect(
      from.sort((a, b) => a - b),
      kind,
    ).toEqual(wanted);
  }
});
