// No finding without a sample: the gallery has every code of every table, and no other.
import { describe, expect, test } from 'vitest';
import { ROOMS } from '../../../../tests/docs/gallery/rooms.ts';
import { englishTables } from './index.ts';

test('the gallery has a room for each table', () => {
  expect(ROOMS.map(({ name }) => name).sort()).toEqual(Object.keys(englishTables).sort());
});

describe.each(Object.entries(englishTables))('%s', (name, table) => {
  const samples = ROOMS.find((room) => room.name === name)?.samples ?? {};

  test('every code has a sample, and every sample is of a code', () => {
    expect(Object.keys(table).length).toBeGreaterThan(5);
    expect(Object.keys(samples).sort()).toEqual(Object.keys(table).sort());
  });

  test('a sample that was written out says why, and few were', () => {
    const reasons = Object.values(samples).flatMap(({ writtenOut }) => writtenOut ?? []);
    for (const reason of reasons) expect(reason).toMatch(/\w+ .*\.$/);
    expect(reasons.length).toBeLessThanOrEqual(4);
  });
});
