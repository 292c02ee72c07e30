// A counter says how much; single entries, swaps and told changes of source only say which store gave it.
import { describe, expect, test } from 'vitest';
import { HOLM } from '../../tests/journeys/holm.ts';
import { dayLine, holmOpening, litres, readings, Told } from '../../tests/journeys/told.ts';
import { changed } from '../../tests/outpost/small-outpost.ts';

/** Holm without the flow by the norm, so that people hold all that they drank. */
const DRY = changed('litresPerPersonDay: 1.5', 'litresPerPersonDay: 0', HOLM);

function holm(): Told {
  const told = new Told(DRY);
  told.tell('opening', holmOpening());
  return told;
}

/** A line without the other counters: nothing condensed, nothing flushed. */
const line = (day: number, strokes: number | null, product = 0) =>
  dayLine(day, { strokes, product, flushes: 0 });

/** Litres that have left by the tap since the opening. */
const drunkInAll = (told: Told) => told.accountL('people') + told.accountL('lost');

describe('the order of sources', () => {
  test('the buffer gives down to its remainder, the container on the port gives the rest', () => {
    const told = holm();
    told.goTo(1, 21).tell('day-line', line(1, 200));
    expect(told.ledgerL('PB')).toBeCloseTo(0.3, 9);
    expect(told.ledgerL('C-01')).toBeCloseTo(20 - (5 - 1.7), 9);
    expect(drunkInAll(told)).toBeCloseTo(5, 9);
  });

  test('what was made is in the buffer before it is drunk', () => {
    const told = holm();
    told.goTo(1, 21).tell('day-line', line(1, 200, 3));
    expect(told.ledgerL('PB')).toBeCloseTo(0.3, 9);
    expect(told.ledgerL('C-01')).toBeCloseTo(20 - (5 - 4.7), 9);
    expect(told.ledgerL('KB')).toBeCloseTo(4 - 3 / 0.96, 6);
  });

  test('with nothing on the port the reserve gave the rest, and that is said', () => {
    const told = holm();
    told.goTo(1, 12).tell('declared-empty', {
      store: 'C-01',
      port: 'tap feed',
      counters: readings({ strokes: 0, product: 0 }),
    });
    told.goTo(1, 21).tell('day-line', line(1, 200));
    expect(told.ledgerL('R1')).toBeCloseTo(150 - 3.3, 9);
    expect(told.findings('reserve-drawn')).toHaveLength(1);
  });

  test('the buffer that was drawn through is known to stand at its remainder', () => {
    const told = holm();
    told.goTo(1, 21).tell('day-line', line(1, 200));
    const { valueL, uL } = told.believed('PB');
    expect(valueL).toBeCloseTo(0.3, 1);
    expect(uL).toBeLessThan(0.12);
    const c = told.believed('C-01');
    expect(c.uL).toBeGreaterThan(0.25);
    expect(c.uL).toBeLessThan(0.5);
  });

  test('drawn through to the reserve, the buffer stands at its remainder too', () => {
    const told = holm();
    told.goTo(1, 12).tell('declared-empty', {
      store: 'C-01',
      port: 'tap feed',
      counters: readings({ strokes: 0, product: 0 }),
    });
    told.goTo(1, 21).tell('day-line', line(1, 200));
    expect(told.believed('PB').uL).toBeLessThan(0.12);
  });
});

describe('single uses are a split, never added', () => {
  const drink = (value: number, from = 'tap') => ({
    from,
    to: 'people',
    amount: litres(value),
    use: 'drink' as const,
  });

  test('drinks and then the counter give exactly what the counter says', () => {
    const told = holm();
    told.goTo(1, 8).tell('movement', drink(0.2));
    told.goTo(1, 12).tell('movement', drink(3));
    expect(told.ledgerL('PB')).toBeCloseTo(0.3, 9);
    expect(told.ledgerL('C-01')).toBeCloseTo(18.5, 9);
    told.goTo(1, 21).tell('day-line', line(1, 200));
    expect(drunkInAll(told)).toBeCloseTo(5, 9);
    expect(told.ledgerL('C-01')).toBeCloseTo(20 - 3.3, 9);
    told.goTo(2, 21).tell('day-line', line(2, 100));
    expect(drunkInAll(told)).toBeCloseTo(7.5, 9);
  });

  test('drinks that exceed the counter are asked about, and the counter stands', () => {
    const told = holm();
    told.goTo(1, 12).tell('movement', drink(6));
    told.goTo(1, 21).tell('day-line', line(1, 200));
    expect(told.findings('drinks-exceed-counter')).toHaveLength(1);
    expect(drunkInAll(told)).toBeCloseTo(5, 9);
    expect(told.ledgerL('C-01')).toBeCloseTo(20 - 3.3, 9);
  });

  test('drinks that were taken from the reserve while nothing stood on the port stay there, and the sum is the counter’s', () => {
    const told = holm();
    told.goTo(1, 8).tell('declared-empty', {
      store: 'C-01',
      port: 'tap feed',
      counters: readings({ strokes: 40, product: 0 }),
    });
    told.goTo(1, 9).tell('movement', drink(2));
    const fromReserve = 150 - told.ledgerL('R1');
    expect(fromReserve).toBeCloseTo(1.3, 9);
    told.goTo(1, 10).tell('hookup', { store: 'C-04', port: 'tap feed' });
    told.goTo(1, 21).tell('day-line', line(1, 200));
    expect(drunkInAll(told)).toBeCloseTo(5, 9);
    expect(150 - told.ledgerL('R1')).toBeCloseTo(fromReserve, 9);
    expect(18 - told.ledgerL('C-04')).toBeCloseTo(5 - 1.7 - 1.3, 9);
  });

  test('drinks from a container that was taken off without a reading stay with it', () => {
    const told = holm();
    told.goTo(1, 9).tell('movement', drink(4));
    told.goTo(1, 10).tell('hookup', { store: 'C-04', port: 'tap feed' });
    told.goTo(1, 21).tell('day-line', line(1, 200));
    expect(20 - told.ledgerL('C-01')).toBeCloseTo(2.3, 9);
    expect(18 - told.ledgerL('C-04')).toBeCloseTo(1, 9);
    expect(drunkInAll(told)).toBeCloseTo(5, 9);
  });

  test('a spill of counted water is lost and no further use', () => {
    const told = holm();
    told.goTo(1, 12).tell('movement', { from: 'tap', to: 'lost', amount: litres(1), use: 'spill-lost' });
    told.goTo(1, 21).tell('day-line', line(1, 200));
    expect(told.accountL('lost')).toBeCloseTo(1, 9);
    expect(drunkInAll(told)).toBeCloseTo(5, 9);
  });

  test('writing drinks down makes the stock no less certain', () => {
    const plain = holm();
    plain.goTo(1, 21).tell('day-line', line(1, 400));
    const told = holm();
    for (let k = 0; k < 40; k++) told.goTo(1, 6 + k / 3).tell('movement', drink(0.2));
    told.goTo(1, 21).tell('day-line', line(1, 400));
    expect(told.believed('C-01').valueL).toBeCloseTo(plain.believed('C-01').valueL, 6);
    expect(told.believed('C-01').uL).toBeCloseTo(plain.believed('C-01').uL, 6);
  });
});

describe('swaps and told changes of source', () => {
  test('counters at a swap say what the old container gave, the rest of the day is the new one’s', () => {
    const told = holm();
    told.goTo(1, 12).tell('declared-empty', {
      store: 'C-01',
      port: 'tap feed',
      counters: readings({ strokes: 120, product: 1 }),
    });
    told.tell('hookup', { store: 'C-04', port: 'tap feed' });
    told.goTo(1, 21).tell('day-line', line(1, 300, 2));
    expect(20 - told.ledgerL('C-01')).toBeCloseTo(3 - 2.7, 9);
    expect(18 - told.ledgerL('C-04')).toBeCloseTo(7.5 - 3 - 1, 9);
    expect(drunkInAll(told)).toBeCloseTo(7.5, 9);
  });

  test('a told draw from the reserve is a part of what the counter says', () => {
    const told = holm();
    told.goTo(1, 20).tell('source-change', {
      counter: 'strokes',
      store: 'R1',
      sinceMs: 0,
      amount: litres(1.5),
      reserve: true,
    });
    expect(told.ledgerL('R1')).toBe(150);
    told.goTo(1, 21).tell('day-line', line(1, 200));
    expect(told.ledgerL('R1')).toBeCloseTo(148.5, 9);
    expect(20 - told.ledgerL('C-01')).toBeCloseTo(5 - 1.7 - 1.5, 9);
    expect(drunkInAll(told)).toBeCloseTo(5, 9);
    told.goTo(2, 21).tell('day-line', line(2, 100));
    expect(told.ledgerL('R1')).toBeCloseTo(148.5, 9);
    expect(drunkInAll(told)).toBeCloseTo(7.5, 9);
  });

  test('drinks out of the reserve are inside a told draw from it, not beside it', () => {
    const told = holm();
    told.goTo(1, 8).tell('declared-empty', {
      store: 'C-01',
      port: 'tap feed',
      counters: readings({ strokes: 0, product: 0 }),
    });
    told.goTo(1, 9).tell('movement', { from: 'tap', to: 'people', amount: litres(3), use: 'drink' });
    told.goTo(1, 20).tell('source-change', {
      counter: 'strokes',
      store: 'R1',
      sinceMs: 0,
      amount: litres(3),
      reserve: true,
    });
    told.goTo(1, 21).tell('day-line', line(1, 200));
    expect(drunkInAll(told)).toBeCloseTo(5, 9);
    expect(150 - told.ledgerL('R1')).toBeCloseTo(3.3, 9);
  });

  test('told draws above the counter are asked about, and the counter stands', () => {
    const told = holm();
    told.goTo(1, 20).tell('source-change', {
      counter: 'strokes',
      store: 'R1',
      sinceMs: 0,
      amount: litres(9),
      reserve: true,
    });
    told.goTo(1, 21).tell('day-line', line(1, 200));
    expect(told.findings('drinks-exceed-counter')).toHaveLength(1);
    expect(drunkInAll(told)).toBeCloseTo(5, 9);
  });
});

describe('what a purifier rejects', () => {
  test('it leaves the same source beside the product', () => {
    const told = holm();
    told
      .goTo(1, 21)
      .tell('day-line', dayLine(1, { condensate: 996.5, product: 4.8, strokes: 0, flushes: 0 }));
    expect(told.ledgerL('KB')).toBeCloseTo(4 + 6.5 - 5, 6);
    expect(told.ledgerL('PB')).toBeCloseTo(2 + 4.8, 9);
  });

  test('a product that is read before the condensate leaves its source below nothing for a while, and unplaced water is none', () => {
    const told = holm();
    told.goTo(1, 12).tell('meter', { readings: readings({ product: 6 }) });
    expect(told.accountL('unplaced')).toBe(0);
    expect(told.ledgerL('KB')).toBeLessThan(0);
    told.goTo(1, 21).tell('day-line', dayLine(1, { condensate: 997, product: 6.72, strokes: 0, flushes: 0 }));
    expect(told.ledgerL('KB')).toBeCloseTo(4, 6);
  });
});

test('the sum over all accounts is 0 after every entry', () => {
  const told = holm();
  for (let day = 1; day <= 20; day++) {
    told.goTo(day, 9).tell('movement', { from: 'tap', to: 'people', amount: litres(0.2), use: 'drink' });
    told
      .goTo(day, 21)
      .tell(
        'day-line',
        dayLine(day, { condensate: (990 + 3 * day) % 1000, product: 3, strokes: 190, flushes: 12 }),
      );
    expect(told.fold.ledger.closureMg()).toBe(0);
    expect(told.position().closureMg).toBe(0);
  }
});
