// Every refusal of the parsers has its four sentences, calm and filled in.
import { expect, it } from 'vitest';
import {
  parseInstantIso,
  parseNumber,
  parseQuantity,
  type UnitsFindingCode,
} from '../../../ground/units/index.ts';
import { unitsWords } from './units.ts';

const volume = { dimension: 'volume' } as const;

/** One failing sample for each code. */
const samples: Readonly<
  Record<
    UnitsFindingCode,
    () => ReturnType<typeof parseNumber | typeof parseQuantity | typeof parseInstantIso>
  >
> = {
  'input-too-long': () => parseNumber('1'.repeat(65)),
  'number-missing': () => parseNumber(''),
  'number-unreadable': () => parseNumber('many'),
  'number-ambiguous': () => parseNumber('1,234'),
  'number-separator': () => parseNumber('7,5', { decimal: 'point' }),
  'number-too-many-digits': () => parseNumber('123456789012345678'),
  'number-too-large': () => parseNumber('1e400'),
  'number-too-small': () => parseNumber('1e-400'),
  'unit-missing': () => parseQuantity('8', volume),
  'unit-unknown': () => parseQuantity('8 mLL', volume),
  'unit-two-readings': () => parseQuantity('200 ML', volume),
  'unit-of-other-kind': () => parseQuantity('8 kg/d', volume),
  'amount-negative': () => parseQuantity('-8 L', volume),
  'doubt-not-positive': () => parseQuantity('8+-0 L', volume),
  'time-unreadable': () => parseInstantIso('noon'),
  'time-offset-missing': () => parseInstantIso('2147-04-15T21:00'),
  'time-offset-unreadable': () => parseInstantIso('2147-04-15T21:00+99:00'),
  'time-date-not-in-calendar': () => parseInstantIso('2147-02-30T00:00Z'),
  'time-not-on-clock': () => parseInstantIso('2147-02-03T25:00Z'),
  'time-second-60': () => parseInstantIso('2147-02-03T23:59:60Z'),
  'time-hour-24': () => parseInstantIso('2147-02-03T24:00Z'),
  'time-year-out-of-range': () => parseInstantIso('3147-02-03T00:00Z'),
};

it.each(Object.entries(samples))('%s', (code, fail) => {
  const read = fail();
  if (read.ok) throw new Error('the sample was taken');
  expect(read.finding.code).toBe(code);
  const words = unitsWords[read.finding.code](read.finding.data, read.finding.where);
  for (const sentence of Object.values(words)) {
    expect(sentence).not.toMatch(/undefined|null|!|please|invalid/i);
    expect(sentence.length).toBeGreaterThan(0);
  }
  expect(words.text).toMatch(/\.$/);
  expect(words.remedy).toMatch(/\.$/);
});

it('says both readings of an ambiguous number', () => {
  const read = parseNumber('1,234');
  if (read.ok) throw new Error('taken');
  expect(unitsWords['number-ambiguous'](read.finding.data, {})).toEqual({
    text: '"1,234" has two readings: 1.234 or 1234.',
    expected: 'a number with one reading',
    received: '"1,234"',
    remedy: 'Write 1.234 or 1234.',
  });
});
