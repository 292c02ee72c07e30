// The sets that ship are read without a finding; what is from memory is off; acronyms of bodies stand in their sources alone.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { chosenRows } from './chosen-rows.ts';
import type { LimitRow, LimitSet } from './limit-set.ts';
import { readLimitSet } from './read-limit-set.ts';

const FOLDER = join(import.meta.dirname, '../../../limits');
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith('.yaml'));
const textOf = (name: string) => readFileSync(join(FOLDER, name), 'utf8');

function taken(name: string): LimitSet {
  const read = readLimitSet(textOf(name), { file: name });
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.set;
}

const rows = FILES.flatMap((name) => taken(name).rows);
const rowOf = (file: string, id: string): LimitRow | undefined =>
  taken(`${file}.yaml`).rows.find((row) => row.id === id);

describe.each(FILES)('%s', (name) => {
  const set = taken(name);

  test('is frozen, and its id is the name of the file', () => {
    expect(Object.isFrozen(set) && set.rows.every((row) => Object.isFrozen(row.limit))).toBe(true);
    expect(`${set.id.replaceAll(' ', '-')}.yaml`).toBe(name);
  });

  test('names a source, a place in it, a cause, a consequence and a first act for every row', () => {
    for (const row of set.rows)
      for (const text of [row.source, row.locator, row.cause, row.consequence, row.firstAct])
        expect(text).toMatch(/\S{3}/);
  });

  test('names a body or its rules nowhere but in a source', () => {
    const text = textOf(name).replace(/^ {4}source: >-\n.*$/gm, '');
    const { source } = set.rows[0] as LimitRow;
    expect(textOf(name)).toContain(source);
    expect(text).not.toMatch(/\b(US|EPA|WHO|EU|NASA|NRC|SWEG|GOST|ECHA|HSIR|CFR|ISS|JSC)\b|SanPiN/);
  });
});

test('a row from memory is off and has its figure nowhere that a judge reads', () => {
  const remembered = rows.filter(({ evidence }) => evidence === 'memory');
  expect(remembered.length).toBeGreaterThan(100);
  for (const row of remembered) {
    expect(row.limit).toBeNull();
    expect(row.remembered).not.toBeNull();
  }
  expect(rows.filter(({ evidence, limit }) => evidence !== 'memory' && limit === null)).toEqual([]);
});

test('figures that are told on other bases in other rules keep theirs', () => {
  expect(rowOf('national-health-limits', 'nitrate most')).toMatchObject({
    basis: 'as N',
    limit: { atMost: 10 },
  });
  expect(rowOf('directive-of-1998', 'nitrate most')).toMatchObject({
    basis: 'as NO3',
    limit: { atMost: 50 },
  });
  expect(rowOf('national-aesthetic-limits', 'silver most')?.limit).toEqual({ atMost: 0.1 });
  expect(rowOf('crewed-exposure-by-duration', 'TOC most')).toMatchObject({
    basis: 'as C',
    limit: { atMost: 3 },
  });
  expect(rowOf('world-guidelines', 'E coli most')).toMatchObject({ limit: { atMost: 0 }, noneIfBelow: 1 });
});

test('every set can be chosen for drinking, for as long as it reaches', () => {
  for (const name of FILES) {
    const chosen = chosenRows(taken(name), { use: 'drink', exposureDays: 1 });
    expect(chosen.ok, name).toBe(true);
    expect(chosen.ok && chosen.rows.length).toBeGreaterThan(0);
  }
});
