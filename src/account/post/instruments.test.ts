// Instruments calibrated anew or replaced: learned errors end, counters go on from where the new one stands, a gap is said.
import { describe, expect, test } from 'vitest';
import { HOLM } from '../../../tests/journeys/holm.ts';
import { dayLine, holm, holmOpening, litres, readings, Told } from '../../../tests/journeys/told.ts';
import { changed } from '../../../tests/outpost/small-outpost.ts';
import { msPerDay } from '../../ground/units/index.ts';
import { errorKey } from '../error-state.ts';

const line = (day: number, values: Partial<Record<string, number | null>> = {}) =>
  dayLine(day, {
    condensate: Number((990 + 3 * day).toFixed(1)) % 1000,
    product: 3,
    strokes: 200,
    flushes: 12,
    ...values,
  } as Record<string, number | null>);

const errorOf = (told: Told, id: string, kind: 'calibration' | 'gauge' = 'calibration') =>
  told.fold.errors.get(errorKey(kind, id));

const figuresOf = (told: Told, id: string, kind: 'calibration' | 'gauge' = 'calibration') => {
  const { place, ...rest } = errorOf(told, id, kind)!;
  const { estimator } = told.fold;
  return { mean: estimator.mean(place), u: Math.sqrt(estimator.variance(place)), place, ...rest };
};

/** Litres that the tap gave: what people hold, and the urine that left them by the norm of 1.5 L a person and day. */
const drunkL = (told: Told): number => {
  const { normsUntilMs, openingMs } = told.fold;
  return told.accountL('people') + (1.5 * 2 * ((normsUntilMs ?? 0) - (openingMs ?? 0))) / msPerDay;
};

/** The flow meter has learned that it reads 2 % low. */
function taught(outpost = HOLM): Told {
  const told = new Told(outpost);
  told.tell('opening', holmOpening());
  const fill = { from: 'R1', to: 'C-03', amount: litres(19.6), instrument: 'fill-meter' };
  const alsoRead = [{ amount: litres(20, 0.02), method: 'weight before and after' }];
  told.goTo(1, 9).tell('movement', { ...fill, alsoRead });
  return told;
}

describe('calibrated anew', () => {
  test('what was learned ends: mean 0, the doubt of the file, no lessons, nothing shared', () => {
    const told = taught();
    expect(figuresOf(told, 'fill-meter').mean).toBeGreaterThan(0.01);
    expect(figuresOf(told, 'fill-meter').lessons).toHaveLength(1);
    const [before, store] = [told.believed('C-03'), told.fold.stores.get('C-03')!.content];
    told.goTo(2, 9).tell('instrument-calibrated', { instrument: 'fill-meter' });
    const after = figuresOf(told, 'fill-meter');
    expect(after).toMatchObject({ mean: 0, assumedU: 0.01, lessons: [], lessonsInAll: 0 });
    expect(after.u).toBeCloseTo(0.01, 15);
    expect(told.fold.estimator.covariance(after.place, store)).toBe(0);
    // What it has measured stays as well known as it was.
    expect(told.believed('C-03')).toEqual(before);
  });

  test('by the doubts of the entry where it tells them; a walk starts from there', () => {
    const told = taught(changed('reading: amount', 'driftRelativePerSqrtDay: 0.001, reading: amount', HOLM));
    told.goTo(2, 9).tell('instrument-calibrated', { instrument: 'fill-meter', calibrationRelative: 0.004 });
    const learned = told
      .goTo(6, 9)
      .position()
      .learned.find(({ of }) => of === 'fill-meter');
    expect(learned?.assumedU).toBe(0.004);
    expect(learned?.u).toBeCloseTo(Math.sqrt(0.004 ** 2 + 0.001 ** 2 * 4), 12);
  });

  test('an offset of a gauge ends as well, and the record of its readings', () => {
    const told = holm();
    for (let k = 0; k < 20; k += 1)
      told.goTo(1, 9 + k / 10).tell('weigh', { store: 'C-04', amount: litres(18.3), method: 'balance' });
    expect(told.fold.records.get('balance')?.length).toBe(20);
    told.goTo(2, 9).tell('instrument-calibrated', { instrument: 'balance', calibrationAbsolute: 0.03 });
    expect(figuresOf(told, 'balance', 'gauge')).toMatchObject({ mean: 0, assumedU: 0.03, lessons: [] });
    expect(told.fold.records.has('balance')).toBe(false);
  });

  test('what one count is worth from now on', () => {
    const told = holm();
    told.goTo(1, 21).tell('day-line', line(1));
    const before = drunkL(told);
    told.goTo(1, 22).tell('instrument-calibrated', { instrument: 'strokes', litresPerCount: 0.0247 });
    told.goTo(1, 23).tell('meter', { readings: readings({ strokes: 100 }) });
    expect(told.fold.litresPerCount.get('strokes')).toBe(0.0247);
    expect(drunkL(told) - before).toBeCloseTo(2.47, 6);
  });

  test('an instrument that nobody knows is said, and changes nothing', () => {
    const told = holm();
    const before = told.position().learned;
    told.goTo(1, 9).tell('instrument-calibrated', { instrument: 'galley scale', calibrationRelative: 0.5 });
    told.tell('instrument-replaced', { instrument: 'galley meter', serial: 'X-1', startsAt: 0 });
    expect(told.findings('instrument-unknown').map(({ data }) => data['name'])).toEqual([
      'galley scale',
      'galley meter',
    ]);
    expect(told.position().learned).toEqual(before);
  });
});

describe('replaced, and the old one read at the end', () => {
  test('a running total goes on from where the new one stands', () => {
    const told = holm();
    told.goTo(1, 21).tell('day-line', line(1, { condensate: 993 }));
    const cabinL = () => -told.accountL('cabin air');
    expect(cabinL()).toBeCloseTo(3, 6);
    told.goTo(2, 12).tell('instrument-replaced', {
      instrument: 'condensate',
      serial: 'CT-9',
      endedAt: 994.5,
      startsAt: 12,
    });
    expect(cabinL()).toBeCloseTo(4.5, 6);
    told.goTo(2, 21).tell('day-line', line(2, { condensate: 13.4 }));
    expect(cabinL()).toBeCloseTo(5.9, 6);
    expect(told.findings('counter-gap')).toEqual([]);
    expect(told.findings('counter-backwards')).toEqual([]);
  });

  test('the old one had rolled over before it was taken off', () => {
    const told = holm();
    told.goTo(1, 21).tell('day-line', line(1, { condensate: 998 }));
    told.goTo(2, 12).tell('instrument-replaced', {
      instrument: 'condensate',
      serial: 'CT-9',
      endedAt: 1.5,
      startsAt: 0,
    });
    told.goTo(2, 21).tell('day-line', line(2, { condensate: 1.5 }));
    expect(-told.accountL('cabin air')).toBeCloseTo(8 + 3.5 + 1.5, 6);
  });

  test('an amount since the line: the old one gave its part, the new one begins at its own', () => {
    const told = holm();
    told.goTo(1, 21).tell('day-line', line(1));
    const before = drunkL(told);
    told.goTo(2, 12).tell('instrument-replaced', {
      instrument: 'strokes',
      serial: 'DS-32',
      endedAt: 120,
      startsAt: 5,
    });
    told.goTo(2, 21).tell('day-line', line(2, { strokes: 95 }));
    expect(drunkL(told) - before).toBeCloseTo((120 + 90) * 0.025, 6);
    // The line is the new beginning of both.
    told.goTo(3, 21).tell('day-line', line(3, { strokes: 200 }));
    expect(drunkL(told) - before).toBeCloseTo((120 + 90 + 200) * 0.025, 6);
    expect(
      told
        .position()
        .usageDays('drinking')
        .map(({ day }) => day),
    ).toEqual([1, 2, 3]);
  });

  test('single drinks of the open interval are inside what the old one says', () => {
    const told = holm();
    told.goTo(1, 21).tell('day-line', line(1));
    const before = drunkL(told);
    told.goTo(2, 9).tell('movement', { from: 'tap', to: 'people', amount: litres(0.5), use: 'drink' });
    told.goTo(2, 12).tell('instrument-replaced', {
      instrument: 'strokes',
      serial: 'DS-32',
      endedAt: 120,
      startsAt: 0,
    });
    expect(drunkL(told) - before).toBeCloseTo(3, 6);
  });

  test('what the new one errs by is not known yet', () => {
    const told = taught();
    told.goTo(2, 9).tell('instrument-replaced', { instrument: 'fill-meter', serial: 'FM-2', startsAt: 0 });
    expect(figuresOf(told, 'fill-meter')).toMatchObject({ mean: 0, assumedU: 0.01 });
    // It counts no interval, so nothing is missing.
    expect(told.findings('counter-gap')).toEqual([]);
  });
});

describe('replaced, and nobody read the old one', () => {
  const replace = { instrument: 'strokes', serial: 'DS-32', startsAt: 0 };

  test('the daily mean stands in with 15 %, and the day is no day of use', () => {
    const told = holm();
    for (const day of [1, 2, 3]) told.goTo(day, 21).tell('day-line', line(day, { strokes: 180 + 10 * day }));
    const [before, uBefore] = [drunkL(told), told.believed('C-01').uL];
    told.goTo(4, 9).tell('instrument-replaced', replace);
    // 190, 200 and 210 strokes: a mean of 200, for the twelve hours since the line.
    const meanL = 100 * 0.025;
    expect(drunkL(told) - before).toBeCloseTo(meanL, 6);
    const [finding] = told.findings('counter-gap');
    expect(finding?.data).toMatchObject({
      instrument: 'strokes',
      massMg: meanL * 1e6,
      u95Mg: 2 * Math.round(meanL * 1e6 * 0.15),
    });
    expect(told.believed('C-01').uL).toBeGreaterThan(uBefore);
    told.goTo(4, 21).tell('day-line', line(4, { strokes: 100 }));
    told.goTo(5, 21).tell('day-line', line(5));
    expect(
      told
        .position()
        .usageDays('drinking')
        .map(({ day }) => day),
    ).toEqual([1, 2, 3, 5]);
    // Flushes do not go through it.
    expect(
      told
        .position()
        .usageDays('technical')
        .map(({ day }) => day),
    ).toEqual([1, 2, 3, 4, 5]);
  });

  test('the mean does not learn from the day of the gap', () => {
    const told = holm();
    for (const day of [1, 2, 3]) told.goTo(day, 21).tell('day-line', line(day));
    told.goTo(4, 9).tell('instrument-replaced', replace);
    told.goTo(4, 21).tell('day-line', line(4, { strokes: 100 }));
    // 100 strokes in the twelve hours since the new one was there are 200 a day.
    expect(told.fold.counters.get('strokes')?.meanMgPerDay).toBeCloseTo(200 * 25_000, 3);
  });

  test('before a mean is known nothing stands in, and that is said', () => {
    const told = holm();
    told.goTo(1, 9).tell('instrument-replaced', { ...replace, endedAt: null });
    expect(told.findings('counter-gap')[0]?.data['massMg']).toBeNull();
    expect(drunkL(told)).toBeCloseTo(0, 6);
  });
});

describe('a reading from before the calibration', () => {
  const CALIBRATED = changed(
    'rollsOverAt: 1000,',
    'rollsOverAt: 1000, calibratedOn: 2147-01-03,',
    changed('logMethod: balance }', 'logMethod: balance, calibratedOn: 2147-01-03 }', HOLM),
  );
  const opened = () => {
    const told = new Told(CALIBRATED);
    told.tell('opening', holmOpening());
    return told;
  };

  test('is said once for an instrument, and used all the same', () => {
    const told = opened();
    for (const hour of [9, 10])
      told.goTo(1, hour).tell('weigh', { store: 'C-04', amount: litres(18.3), method: 'balance' });
    for (const day of [1, 2]) told.goTo(day, 21).tell('day-line', line(day));
    expect(told.findings('reading-before-calibration').map(({ data }) => data['instrument'])).toEqual([
      'balance',
      'condensate',
    ]);
    expect(told.believed('C-04').valueL).toBeGreaterThan(18.1);
  });

  test('a reading that nobody took says nothing', () => {
    const told = opened();
    told.goTo(1, 21).tell('day-line', line(1, { condensate: null }));
    expect(told.findings('reading-before-calibration')).toEqual([]);
  });

  test('from 00:00 of its day on there is nothing to say', () => {
    const told = opened();
    told.goTo(3, 0).tell('weigh', { store: 'C-04', amount: litres(18.3), method: 'balance' });
    told.goTo(3, 21).tell('day-line', line(3));
    expect(told.findings('reading-before-calibration')).toEqual([]);
  });
});
