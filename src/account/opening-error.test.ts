// What was told first and was wrong: the closed form, said once, and begun anew with a new opening.
import { describe, expect, test } from 'vitest';
import { HOLM } from '../../tests/journeys/holm.ts';
import { at, holmOpening, litres, Told } from '../../tests/journeys/told.ts';
import { errorKey } from './error-state.ts';

/** C-04 told at 18 L with a doubt of so many litres. */
const openingWith = (uL: number, valueL = 18) =>
  holmOpening({
    stores: holmOpening().stores.map((each) =>
      each.store === 'C-04' ? { ...each, amount: litres(valueL, uL) } : each,
    ),
  });

function opened(uL: number): Told {
  const told = new Told(HOLM);
  told.tell('opening', openingWith(uL));
  return told;
}

function believedOff(told: Told): { mean: number; u: number } {
  const { place } = told.fold.errors.get(errorKey('opening', 'C-04'))!;
  return { mean: told.fold.estimator.mean(place), u: Math.sqrt(told.fold.estimator.variance(place)) };
}

function weigh(told: Told, day: number, value: number, uL = 0.2): void {
  told.goTo(day, 9).tell('weigh', { store: 'C-04', amount: litres(value, uL), method: 'by a spring scale' });
}

describe('the closed form', () => {
  test('one reading after a movement: e = ν u₀² / (u₀² + s² + u²)', () => {
    const [told0, u0, s, u] = [18, 1.5, 0.4, 0.2];
    const told = opened(u0);
    told.goTo(1, 9).tell('movement', { from: 'C-04', to: 'outside', amount: litres(5, s) });
    weigh(told, 2, 10.5, u);
    const innovation = 10.5 - (told0 - 5);
    const gain = (u0 * u0) / (u0 * u0 + s * s + u * u);
    expect(believedOff(told).mean).toBeCloseTo(gain * innovation, 12);
    expect(believedOff(told).u).toBeCloseTo(u0 * Math.sqrt(1 - gain), 12);
  });

  test('many readings: that of one reading with their mean, which only what was moved stands between', () => {
    const [u0, u, count] = [1.5, 0.2, 7];
    const told = opened(u0);
    const values = [16.9, 17.1, 17, 16.8, 17.2, 17.1, 16.9];
    for (const [k, value] of values.entries()) weigh(told, 1 + k, value, u);
    const innovation = values.reduce((sum, value) => sum + value, 0) / count - 18;
    const gain = (u0 * u0) / (u0 * u0 + (u * u) / count);
    expect(believedOff(told).mean).toBeCloseTo(gain * innovation, 10);
    expect(believedOff(told).u).toBeCloseTo(u0 * Math.sqrt(1 - gain), 10);
  });

  test('the content itself is what it would be without the state beside it', () => {
    const watched = opened(1.5);
    weigh(watched, 2, 16.5);
    const precision = 1 / (1.5 * 1.5) + 1 / (0.2 * 0.2);
    const { valueL, uL } = watched.believed('C-04');
    expect(valueL).toBeCloseTo((18 / (1.5 * 1.5) + 16.5 / (0.2 * 0.2)) / precision, 6);
    expect(uL).toBeCloseTo(Math.sqrt(1 / precision), 6);
  });

  test('a doubt below 1.5 % of the capacity is not watched', () => {
    expect(opened(0.32).fold.errors.has(errorKey('opening', 'C-04'))).toBe(false);
    expect(opened(0.34).fold.errors.has(errorKey('opening', 'C-04'))).toBe(true);
  });
});

describe('what is said', () => {
  test('how far off, with its ±, and from how many days a slow loss would look the same', () => {
    const told = opened(1.5);
    weigh(told, 10, 15);
    const [finding] = told.findings('opening-off');
    const { mean, u } = believedOff(told);
    const days = (at(10, 9) - at(0, 21)) / (24 * 3_600_000);
    expect(finding).toMatchObject({ severity: 'know', where: { store: 'C-04' } });
    expect(finding?.data).toMatchObject({
      toldMg: 18_000_000,
      toldAtMs: at(0, 21),
      toldBy: 'opening',
      offMg: Math.round(mean * 1e6),
      u95Mg: 2 * Math.round(u * 1e6),
      days: Math.round(days),
      perDayMg: Math.round(Math.abs(Math.round(mean * 1e6)) / days),
      how: 'weighed',
    });
  });

  test('within three days no slow loss is thought of', () => {
    const told = opened(1.5);
    weigh(told, 2, 15);
    expect(told.findings('opening-off')[0]?.data['perDayMg']).toBeNull();
  });

  test('once, however often it is read', () => {
    const told = opened(1.5);
    for (let day = 2; day <= 20; day += 1) weigh(told, day, day % 2 === 0 ? 15 : 15.1);
    expect(told.findings('opening-off')).toHaveLength(1);
    expect(told.findings('reading-far-off')).toHaveLength(0);
  });

  test('nothing within two standard deviations, nor where the reading hardly narrows it', () => {
    const near = opened(1.5);
    weigh(near, 2, 17.7);
    expect(near.findings('opening-off')).toEqual([]);
    const rough = opened(1.5);
    weigh(rough, 2, 12, 2);
    expect(rough.findings('opening-off')).toEqual([]);
  });

  test('a reading that chance does not explain is no wrong opening: something happened to the store', () => {
    const told = opened(1.5);
    weigh(told, 2, 9);
    expect(told.findings('reading-far-off')).toHaveLength(1);
    expect(told.findings('opening-off')).toEqual([]);
    expect(believedOff(told).u).toBeGreaterThan(0.9 * 1.5);
  });
});

test('a new opening starts anew: its own doubt, nothing learned, and it is said again', () => {
  const told = opened(1.5);
  weigh(told, 2, 15);
  told.goTo(3, 9).tell('opening', { ...openingWith(1, 12), asOfMs: at(3, 9) });
  expect(believedOff(told)).toEqual({ mean: 0, u: 1 });
  expect(told.fold.errors.get(errorKey('opening', 'C-04'))).toMatchObject({ assumedU: 1, lessons: [] });
  weigh(told, 4, 14.4);
  expect(told.findings('opening-off').map(({ data }) => Math.sign(Number(data['offMg'])))).toEqual([-1, 1]);
  // Told well the third time: there is nothing to watch any more.
  told.goTo(5, 9).tell('opening', { ...openingWith(0.1, 14), asOfMs: at(5, 9) });
  weigh(told, 6, 14.3);
  expect(told.findings('opening-off')).toHaveLength(2);
  expect(told.position().learned.some(({ kind, of }) => kind === 'opening' && of === 'C-04')).toBe(false);
});
