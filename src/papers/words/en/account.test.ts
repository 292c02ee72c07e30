// Every finding of the account and every refusal of the desk has four whole sentences, for the data that comes with it.
import { describe, expect, test } from 'vitest';
import { accountData } from '../../../../tests/papers/account-data.ts';
import { deskData } from '../../../../tests/papers/desk-data.ts';
import type { AccountFindingCode } from '../../../account/index.ts';
import type { FindingData, Where } from '../../../ground/units/index.ts';
import type { DeskFindingCode } from '../desk-codes.ts';
import type { Sentences, WordsContext } from '../shape.ts';
import { accountWords } from './account.ts';
import { deskWords } from './desk.ts';
import { englishTables, englishWords } from './index.ts';

const context: WordsContext = {
  dayRule: { dayOneUtcMs: Date.UTC(2147, 2, 1), lineMinuteOfDay: 1260 },
  mgPerL: null,
};

const where: Where = { store: 'C-16', entry: 'an id' };

/** A sentence for people: whole, calm, and without a trace of the machine that made it. */
function expectSound(said: Sentences): void {
  for (const sentence of [said.text, said.remedy]) expect(sentence).toMatch(/[.?]$/);
  for (const part of Object.values(said)) {
    expect(part.trim()).not.toBe('');
    expect(part).not.toMatch(
      /undefined|NaN|null|\[object|Infinity|!|please|oops|fit to drink|\s{2}| \.|\.\.$/i,
    );
  }
}

type Sample = readonly [code: string, data: FindingData];
const flat = (samples: Readonly<Record<string, readonly FindingData[]>>): readonly Sample[] =>
  Object.entries(samples).flatMap(([code, list]) => list.map((data) => [code, data] as const));

describe('the account', () => {
  test.each(flat(accountData))('%s %#', (code, data) => {
    expectSound(accountWords[code as AccountFindingCode](data, where, context));
  });

  test.each(flat(accountData))('%s %# before the days are counted', (code, data) => {
    expectSound(accountWords[code as AccountFindingCode](data, where));
  });

  test('a copy by another clock: litres, times, the difference, what the store would hold, and that it waits', () => {
    const [first = {}] = accountData['duplicate-proposed'];
    const { text, remedy } = accountWords['duplicate-proposed'](first, where, context);
    expect(text.replaceAll('\u00A0', ' ')).toBe(
      '20.5 L from FA to C-16 seems to stand twice in the book, as E0034 and E0035: told by two sources whose clocks differ by +5:30 (Day 9 09:16 UTC and Day 9 14:46 UTC). With both, C-16 would hold 41.0 L against its capacity of 22.0 L. E0035 is left out of the position until somebody decides.',
    );
    expect(remedy).toContain('waterwright log decide skerry:35 skerry:36 merge.');
    expect(remedy).toContain('waterwright log decide skerry:35 skerry:36 both.');
  });

  const textOf = (code: 'opening-off' | 'doubts-do-not-fit' | 'counter-gap', k: number): string => {
    const { text, remedy } = accountWords[code](accountData[code][k] ?? {}, where, context);
    return `${text} ${remedy}`.replaceAll('\u00A0', ' ');
  };

  test('a slow loss is thought of only where water is missing, and over more than a few days', () => {
    const slow = 'A slow loss of 0.1 L a day since then would look the same.';
    expect([0, 1, 2].map((k) => textOf('opening-off', k).includes(slow))).toEqual([true, false, false]);
    expect(textOf('opening-off', 0)).toContain(
      'C-16 held 5.1 ± 2.8 L less than the opening said (150.0 L at Day 0 21:00 UTC)',
    );
    expect(textOf('opening-off', 3)).toContain('less than the loader\u2019s figure said');
    expect(textOf('opening-off', 6)).toContain('less than its first entry said');
  });

  test('what can be looked at is an instrument; a way of reading and an assumption are not', () => {
    const looked = [0, 1, 2, 3, 4, 5].map((k) => textOf('doubts-do-not-fit', k).includes('looked at.'));
    expect(looked).toEqual([true, false, false, false, false, false]);
    expect(textOf('doubts-do-not-fit', 1)).toContain('surer than their ± says');
    expect(textOf('doubts-do-not-fit', 2)).toContain('Give such a reading its own ±');
    expect(textOf('doubts-do-not-fit', 4)).toContain('norms of people');
  });

  test('a gap says what stands in, or that nothing does', () => {
    expect(textOf('counter-gap', 0)).toContain('Its daily mean stands in: 3.1 ± 0.9 L.');
    expect(textOf('counter-gap', 1)).toContain('Nothing stands in for it');
  });

  test('data that a room forgot is its fault, and is said at once', () => {
    expect(() => accountWords['over-capacity']({ massMg: 1 }, where, context)).toThrow(/ref/);
  });
});

describe('the desk', () => {
  test.each(flat(deskData))('%s %#', (code, data) => {
    expectSound(deskWords[code as DeskFindingCode](data, where, context));
  });

  test.each(deskData['intention-refused'].map((data) => [data['rule'], data] as const))(
    'a refusal by the rule %s says that nothing was written, and the way out',
    (_rule, data) => {
      const { text, remedy } = deskWords['intention-refused'](data, where, context);
      expect(text).toMatch(/^Refused: .*\. Nothing was written\.$/);
      expect(remedy).toContain('waterwright ');
      expect(remedy).toContain('--happened "REASON"');
    },
  );

  test('a rule without words is a fault of the program', () => {
    expect(() => deskWords['intention-refused']({ rule: 'moon' }, where, context)).toThrow(/moon/);
  });
});

test('no two tables share a code, so that a code has one meaning', () => {
  const owners = new Map<string, string[]>();
  for (const [room, table] of Object.entries(englishTables)) {
    for (const code of Object.keys(table)) owners.set(code, [...(owners.get(code) ?? []), room]);
  }
  expect([...owners].filter(([, rooms]) => rooms.length > 1)).toEqual([]);
  expect(englishWords.size).toBe(owners.size);
  expect(owners.size).toBeGreaterThan(150);
});
