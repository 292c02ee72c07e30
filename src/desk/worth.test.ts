// What a reading would be worth: which cover it bears on, in what order bargains stand, and what it says where nothing hangs on it.
import { describe, expect, test } from 'vitest';
import { HOLM } from '../../tests/journeys/holm.ts';
import { dayLine, holmOpening, litres, Told } from '../../tests/journeys/told.ts';
import { changed } from '../../tests/outpost/small-outpost.ts';
import { bestReadings, worthOf } from './worth.ts';

/** Holm with minutes for its readings. */
function outpost(minutes: { readonly weigh?: number; readonly people?: number } = {}): string {
  const { weigh = 14, people = 1 } = minutes;
  let text = changed(
    'gauge: balance, ratingOver',
    'gauge: balance, readingTask: weigh one, ratingOver',
    HOLM,
  );
  text = changed(
    'gauge: gas-injection, ratingOver',
    'gauge: gas-injection, readingTask: gauge, ratingOver',
    text,
  );
  return `${text}taskMinutes:
  - { id: weigh one, minutes: ${weigh}, people: ${people} }
  - { id: gauge, minutes: 50 }
`;
}

type Opening = NonNullable<Parameters<typeof holmOpening>[0]>['stores'];

/** Holm after eight even days; doubts of its stores in litres may be told. */
function position(text = outpost(), doubts: Readonly<Record<string, number>> = {}) {
  const told = new Told(text);
  const opening = holmOpening();
  const stores: Opening = opening.stores.map((each) => {
    const uL = doubts[each.store];
    return uL === undefined ? each : { ...each, amount: litres(each.amount.raw.value, uL) };
  });
  told.tell('opening', { ...opening, stores });
  for (let day = 1; day <= 8; day++)
    told.goTo(day, 21).tell(
      'day-line',
      dayLine(day, {
        condensate: (990 + 3 * day) % 1000,
        product: 3,
        strokes: 160 + (day % 3),
        flushes: 12,
      }),
    );
  return told.position();
}

const order = (...of: Parameters<typeof position>) => bestReadings(position(...of)).map(({ store }) => store);
const gain = (both: { before: { u95: number | null }; after: { u95: number | null } } | null | undefined) =>
  (both?.before.u95 ?? 0) - (both?.after.u95 ?? 0);

describe('one reading', () => {
  test('says act, minutes, and the doubts of content, stock and cover before and after', () => {
    const worth = worthOf(position(outpost({ people: 2 }), { 'C-04': 1 }), 'C-04');
    expect(worth).toMatchObject({
      way: 'weighing',
      instrument: 'balance',
      task: { id: 'weigh one', minutes: 14, people: 2 },
      cover: { grade: 'drinking', reach: 'free' },
    });
    // By hand: 1 L and a balance of 0.2 L.
    expect(worth?.content.before.u95).toBeCloseTo(2, 6);
    expect(worth?.content.after.u95).toBeCloseTo(2 / Math.sqrt(1 + 25), 3);
    expect(gain(worth?.cover?.stock)).toBeGreaterThan(1);
    expect(gain(worth?.cover?.days)).toBeGreaterThan(0);
    expect(worth?.cover?.days?.before.value).toBe(worth?.cover?.days?.after.value);
    expect(worth?.content.before.because.method).toBe('worth-of-a-reading');
  });

  test('of the reserve bears on the days to its floor', () => {
    const worth = worthOf(position(), 'R1');
    expect(worth?.cover).toMatchObject({ grade: 'drinking', reach: 'to floor' });
    expect(gain(worth?.cover?.days)).toBeGreaterThan(0);
  });

  test('of water that nobody counts on is worth something for its content only', () => {
    const told = new Told(outpost());
    told.tell('opening', holmOpening());
    told.goTo(1, 12).tell('hold', { hold: 'Q-1', stores: ['C-04'], conditional: [], reason: 'count' });
    for (const store of ['C-04', 'KB']) {
      const worth = worthOf(told.position(), store);
      expect(worth?.cover, store).toBeNull();
      expect(gain(worth?.content), store).toBeGreaterThan(0);
    }
  });

  test('is none where the store cannot be read at any time, or is not there', () => {
    expect(worthOf(position(), 'W-01')).toBeNull();
    expect(worthOf(position(), 'C-99')).toBeNull();
  });
});

describe('bargains', () => {
  test('every store that can be read is there once, those without minutes last', () => {
    const stores = order();
    expect([...stores].sort()).toEqual(['C-01', 'C-02', 'C-03', 'C-04', 'KB', 'PB', 'R1']);
    expect([...stores.slice(-2)].sort()).toEqual(['KB', 'PB']);
  });

  test('gains by the minute never rise down the list, first those of cover and then those of contents', () => {
    const rates = bestReadings(position(outpost(), { 'C-01': 0.8, 'C-02': 1.2 }))
      .filter(({ task }) => task !== null)
      .map(({ cover, content, task }) => {
        const minutes = (task?.minutes ?? 1) * (task?.people ?? 1);
        return {
          cover: Math.max(0, gain(cover?.days)) / minutes,
          content: Math.max(0, gain(content)) / minutes,
        };
      });
    expect(rates.length).toBe(5);
    rates.slice(1).forEach((rate, k) => {
      const above = rates[k];
      if (above === undefined) throw new Error('no rate');
      expect(above.cover).toBeGreaterThanOrEqual(rate.cover);
      if (above.cover === rate.cover) expect(above.content).toBeGreaterThanOrEqual(rate.content);
    });
  });

  test('the same reading with fewer minutes, or of a more doubtful store, moves up and never down', () => {
    const place = (text: string, doubts = {}) => order(text, doubts).indexOf('C-04');
    const minutes = [1, 5, 14, 60, 600].map((weigh) => place(outpost({ weigh })));
    expect(minutes).toEqual([...minutes].sort((a, b) => a - b));
    const doubts = [2, 1, 0.5, 0.25, 0.05].map((u) => place(outpost(), { 'C-04': u }));
    expect(doubts).toEqual([...doubts].sort((a, b) => a - b));
    expect(new Set(doubts).size).toBeGreaterThan(1);
  });

  test('minutes count for all who are at it', () => {
    const rank = (people: number) => order(outpost({ weigh: 2, people }), { 'C-04': 2 }).indexOf('C-04');
    expect(rank(60)).toBeGreaterThan(rank(1));
  });

  test('two readings that are worth the same stand in the order of the outpost file', () => {
    const told = new Told(outpost());
    told.tell('opening', holmOpening());
    told.tell('hold', { hold: 'Q-1', stores: ['C-01', 'C-02'], conditional: [], reason: 'count' });
    const stores = bestReadings(told.position()).map(({ store }) => store);
    expect(stores.indexOf('C-01')).toBe(stores.indexOf('C-02') - 1);
  });
});
