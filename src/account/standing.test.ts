// The word for how surely a content is known, for each case that it has.
import { describe, expect, test } from 'vitest';
import { holm, holmOpening, litres, Told } from '../../tests/journeys/told.ts';
import { standingOf } from './standing.ts';
import type { LastReading, StoreState } from './store-state.ts';

const CAPACITY = 22_000_000;
const stateWith = (lastReading: Partial<LastReading> | null, movedAtMs: number | null): StoreState =>
  ({
    facts: { capacityMg: CAPACITY },
    movedAtMs,
    lastReading: lastReading === null ? null : { atMs: 10, how: 'weighed', entry: 'e', ...lastReading },
  }) as StoreState;

describe('the four words', () => {
  test.each([
    ['nobody told', null, null, 0, 'unknown'],
    ['as wide as a quarter of the capacity', { redundancy: 1 }, null, 5_500_000, 'unknown'],
    ['a little less wide', { redundancy: 1 }, null, 5_499_999, 'checked'],
    ['a reading that the book bears out', { redundancy: 0.2 }, 9, 100_000, 'checked'],
    ['a reading that stands alone', { redundancy: 0.199 }, 9, 100_000, 'only source'],
    ['moved at the instant of the reading', { redundancy: 0.9 }, 10, 100_000, 'checked'],
    ['moved after the reading', { redundancy: 0.9 }, 11, 100_000, 'deduced'],
    ['moved since, and known to nobody', { redundancy: 0.9 }, 11, 5_500_000, 'unknown'],
    ['told first, and never moved', { how: 'opening' }, null, 100_000, 'only source'],
  ] as const)('%s', (_what, reading, movedAtMs, uMg, word) => {
    expect(standingOf(stateWith(reading, movedAtMs), uMg)).toBe(word);
  });
});

describe('in a book', () => {
  const wordOf = (told: Told, id: string) =>
    told.position().stores.find(({ facts }) => facts.id === id)?.standing;

  test('an opening is the only source until a reading bears it out', () => {
    const told = holm();
    expect(wordOf(told, 'C-04')).toBe('only source');
    told.goTo(1, 9).tell('weigh', { store: 'C-04', amount: litres(18.1), method: 'balance' });
    expect(wordOf(told, 'C-04')).toBe('checked');
  });

  test('a first weighing of what was only guessed stands alone', () => {
    const told = new Told();
    const stores = holmOpening().stores.map((each) =>
      each.store === 'C-04' ? { ...each, amount: litres(11, 5) } : each,
    );
    told.tell('opening', holmOpening({ stores }));
    expect(wordOf(told, 'C-04')).toBe('only source');
    told.goTo(1, 9).tell('weigh', { store: 'C-04', amount: litres(13), method: 'balance' });
    expect(wordOf(told, 'C-04')).toBe('only source');
    // Weighed once more: now the first one checks it.
    told.goTo(2, 9).tell('weigh', { store: 'C-04', amount: litres(13.1), method: 'balance' });
    expect(wordOf(told, 'C-04')).toBe('checked');
  });

  test('what was moved since makes it deduced, and a reading makes it known again', () => {
    const told = holm();
    told.goTo(1, 9).tell('weigh', { store: 'C-04', amount: litres(18), method: 'balance' });
    told.goTo(1, 10).tell('movement', { from: 'C-04', to: 'C-03', amount: litres(6, 0.2) });
    expect(wordOf(told, 'C-04')).toBe('deduced');
    told.goTo(1, 11).tell('weigh', { store: 'C-04', amount: litres(12.1), method: 'balance' });
    expect(wordOf(told, 'C-04')).toBe('checked');
  });

  test('a measured fill of an empty store, and what comes aboard, are sources of their own', () => {
    const told = holm();
    told.goTo(1, 9).tell('movement', { from: 'R1', to: 'C-03', amount: litres(18, 0.2) });
    const store = {
      store: 'V-1',
      kind: 'container',
      capacityL: 22,
      usableRemainderL: 0.6,
      grade: 'drinking',
    };
    const berth = { visit: 'Skiff', peopleArrive: 0, stores: [{ ...store, amount: litres(20, 0.4) }] };
    told.goTo(1, 10).tell('visit-berth', berth);
    expect([wordOf(told, 'C-03'), wordOf(told, 'V-1')]).toEqual(['only source', 'only source']);
    for (const id of ['C-03', 'V-1'])
      told.goTo(1, 11).tell('movement', { from: id, to: 'C-02', amount: litres(3, 0.5) });
    expect([wordOf(told, 'C-03'), wordOf(told, 'V-1')]).toEqual(['deduced', 'deduced']);
  });

  test('a reading far off is borne out by nothing', () => {
    const told = holm();
    told.goTo(1, 9).tell('weigh', { store: 'C-04', amount: litres(12), method: 'balance' });
    expect(wordOf(told, 'C-04')).toBe('only source');
  });

  test('a guess as wide as the store is unknown', () => {
    const told = new Told();
    const stores = holmOpening().stores.map((each) =>
      each.store === 'C-04' ? { ...each, amount: litres(11, 6) } : each,
    );
    told.tell('opening', holmOpening({ stores }));
    expect(wordOf(told, 'C-04')).toBe('unknown');
  });
});
