// One act entered twice: every reason, and what is no copy.
import { describe, expect, test } from 'vitest';
import { holm, litres } from '../../tests/journeys/told.ts';
import { duplicateReason } from './duplicates.ts';
import type { RecentMovement } from './fold.ts';

const MINUTE_MS = 60_000;
const first: RecentMovement = {
  entry: 'a',
  ref: 'E1',
  entryNo: 'holm:1',
  site: 'holm',
  from: 'R1',
  to: 'C-03',
  massMg: 20_500_000,
  atMs: 0,
  startAtMs: -15 * MINUTE_MS,
  source: null,
  by: 'keeper',
  person: null,
};
/** A later movement that differs from the first in what is said. */
const later = (minutes: number, change: Partial<RecentMovement> = {}): RecentMovement => ({
  ...first,
  entry: 'b',
  atMs: minutes * MINUTE_MS,
  startAtMs: (minutes - 15) * MINUTE_MS,
  ...change,
});
const copy = { by: 'planner', source: 'copied on the ground' };

describe('reasons', () => {
  test.each([
    ['the same person again within two minutes', later(1, { startAtMs: first.startAtMs }), 'double tap'],
    ['the same person again after three minutes', later(3, { startAtMs: first.startAtMs }), null],
    ['the same person, another start', later(1), null],
    ['told by another source within half an hour', later(20, copy), 'another source'],
    ['told by another person at the same minute', later(0, { by: 'second' }), 'another source'],
    ['a clock that runs 5:30 ahead', later(330, copy), 'clock apart'],
    ['a clock that runs 5:30 behind', later(-330, copy), 'clock apart'],
    [
      'entered at another site, a clock of 5:45',
      later(345, { by: 'planner', site: 'ground' }),
      'clock apart',
    ],
    ['5:31 is no clock', later(331, copy), null],
    ['fifteen hours are no clock', later(900, copy), null],
    ['a start that does not go with the clock', later(330, { ...copy, startAtMs: 0 }), null],
    ['without a start, another source', later(330, { ...copy, startAtMs: null }), 'clock apart'],
    ['another crew member of this place, hours later, is no clock', later(330, { by: 'second' }), null],
    ['another amount', later(1, { ...copy, massMg: 20_400_000 }), null],
    ['another end', later(1, { ...copy, to: 'C-04' }), null],
    ['another source of water', later(1, { ...copy, from: 'C-04' }), null],
    ['two people who are named', later(1, { startAtMs: first.startAtMs, person: 'second' }), null],
  ] as const)('%s', (_name, second, reason) => {
    const named = second.person === 'second' ? { ...first, person: 'medic' } : first;
    expect(duplicateReason(named, second)).toBe(reason);
    if (reason !== null) expect(duplicateReason(second, named)).toBe(reason);
  });
});

describe('what the account makes of a twin', () => {
  const fill = (told: ReturnType<typeof holm>, hour: number, more = {}, valueL = 20.5) =>
    told.goTo(1, hour).tell('movement', { from: 'R1', to: 'C-03', amount: litres(valueL) }, more);

  test('it is proposed, left out, and says what both would make', () => {
    const told = holm();
    fill(told, 9);
    fill(told, 14.5, copy);
    expect(told.ledgerL('C-03')).toBe(20.5);
    const [found] = told.findings('duplicate-proposed');
    expect(found?.data).toMatchObject({
      reason: 'clock apart',
      firstRef: 'holm 2',
      apartMin: 330,
      wouldHoldMg: 41_000_000,
      capacityMg: 22_000_000,
    });
    expect(found?.entries).toEqual([told.entries[2]?.id, told.entries[1]?.id]);
  });

  test('another amount is another act', () => {
    const told = holm();
    fill(told, 9, {}, 10);
    fill(told, 9.1, copy, 10.1);
    expect(told.ledgerL('C-03')).toBeCloseTo(20.1, 9);
    expect(told.findings('duplicate-proposed')).toHaveLength(0);
  });

  test('a copy of a copy is compared with both', () => {
    const told = holm();
    fill(told, 9);
    fill(told, 14.5, copy);
    fill(told, 14.51, copy);
    expect(told.ledgerL('C-03')).toBe(20.5);
    expect(told.findings('duplicate-proposed')).toHaveLength(2);
  });

  test('the same push told by two', () => {
    const told = holm();
    const push = {
      from: [{ store: 'W-01', amount: litres(1) }],
      to: [{ store: 'W-02', amount: litres(1) }],
      amount: litres(1),
    };
    told.goTo(1, 9).tell('push', push);
    told.goTo(1, 9.3).tell('push', push, copy);
    expect(told.ledgerL('W-02')).toBe(1);
    expect(told.findings('duplicate-proposed')).toHaveLength(1);
  });

  test('after many others within two days it is still seen', () => {
    const told = holm();
    fill(told, 9);
    for (let k = 0; k < 150; k++)
      told
        .goTo(1, 9.1 + k / 100)
        .tell('movement', { from: 'R1', to: 'outside', amount: litres(0.001 * (k + 1)) });
    fill(told, 14.5, copy);
    expect(told.findings('duplicate-proposed')).toHaveLength(1);
  });
});
