// Table of texts that no number, quantity or time can be read from.
import {
  type NumberRule,
  parseInstantIso,
  parseNumber,
  parseQuantity,
  type UnitsFindingCode,
} from '../../../src/ground/units/index.ts';
import { failure, type Samples, sample } from './sample.ts';

type Refusal = ReturnType<typeof parseNumber | typeof parseQuantity | typeof parseInstantIso>;

function typed(text: string, read: Refusal) {
  return failure([text === '' ? '(nothing)' : text], read.ok ? undefined : read.finding);
}

const number =
  (text: string, rule: NumberRule = {}) =>
  () =>
    typed(text, parseNumber(text, rule));
const volume = (text: string) => () => typed(text, parseQuantity(text, { dimension: 'volume' }));
const time = (text: string) => () => typed(text, parseInstantIso(text));

export const unitsSamples: Samples<UnitsFindingCode> = {
  'input-too-long': sample('More signs than one value can have.', number('1'.repeat(65))),
  'number-missing': sample('Nothing stands where a number belongs.', number('')),
  'number-unreadable': sample('What stands there is no number.', number('many')),
  'number-ambiguous': sample(
    'A comma before three digits: a decimal sign to some, a thousands sign to others.',
    number('1,234'),
  ),
  'number-separator': sample(
    'A file that says which decimal sign it uses has the other one.',
    number('7,5', { decimal: 'point' }),
  ),
  'number-too-many-digits': sample(
    'More digits than a number can keep: the last ones would be lost unseen.',
    number('123456789012345678'),
  ),
  'number-too-large': sample('The number has no end that can be kept.', number('1e400')),
  'number-too-small': sample('The number would become 0 without anybody saying so.', number('1e-400')),
  'unit-missing': sample('A field that has no unit of its own was given a bare number.', volume('8')),
  'unit-unknown': sample('The unit is not one that is known for this field.', volume('8 mLL')),
  'unit-two-readings': sample('ML is megalitre, and hardly ever meant.', volume('200 ML')),
  'unit-of-other-kind': sample('A unit that measures something else.', volume('8 kg/d')),
  'amount-negative': sample('An amount below zero: from and to say which way it went.', volume('-8 L')),
  'doubt-not-positive': sample('A ± of zero or less.', volume('8+-0 L')),
  'time-unreadable': sample('What stands there is no time.', time('noon')),
  'time-offset-missing': sample('A time that does not say by which clock.', time('2147-04-15T21:00')),
  'time-offset-unreadable': sample('An offset from UTC that no clock has.', time('2147-04-15T21:00+99:00')),
  'time-date-not-in-calendar': sample('A day that the month does not have.', time('2147-02-30T00:00Z')),
  'time-not-on-clock': sample('An hour or a minute that no clock shows.', time('2147-02-03T25:00Z')),
  'time-second-60': sample('A leap second: the clock of the book has none.', time('2147-02-03T23:59:60Z')),
  'time-hour-24': sample('24:00 is the end of that day, or a slip.', time('2147-02-03T24:00Z')),
  'time-year-out-of-range': sample('A year that the book does not keep.', time('3147-02-03T00:00Z')),
};
