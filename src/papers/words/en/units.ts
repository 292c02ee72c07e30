// English for what can be wrong with a number, a quantity or a time that somebody typed.
import type { FindingData, UnitsFindingCode } from '../../../ground/units/index.ts';
import type { Sentences, Words } from '../shape.ts';

function received(data: FindingData): string {
  return `"${data['received'] ?? ''}"`;
}

function list(value: FindingData[string] | undefined): readonly string[] {
  return Array.isArray(value) ? value : [];
}

/** `L`, `L or mL`, `mg, g or kg`. */
function anyOf(names: readonly string[]): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}

function example(data: FindingData): string {
  const allowed = list(data['allowed']);
  // What people measure water in, where it is among them.
  const unit = ['L', 'kg'].find((each) => allowed.includes(each)) ?? allowed[0] ?? '';
  return /^[-+\u2212]?[\d.,]+$/.test(String(data['received'])) ? `${data['received']} ${unit}` : `1 ${unit}`;
}

const numberForm = 'a decimal number such as 21.4 or 7,5';
const timeForm = 'now, -15m, -2h, 14:05, D13, D143T14:07, or ISO 8601 such as 2147-04-15T21:00Z';

function sentences(text: string, expected: string, data: FindingData, remedy: string): Sentences {
  const of = data['meter'];
  // Where one of several meters is meant, its name comes first.
  return {
    text: typeof of === 'string' ? `${of}: ${text}` : text,
    expected,
    received: received(data),
    remedy,
  };
}

export const unitsWords: Words<UnitsFindingCode> = {
  'input-too-long': (data) =>
    sentences(
      `The input has ${data['length']} characters, more than this field takes.`,
      `at most ${data['longest']} characters`,
      data,
      'Enter one value only.',
    ),
  'number-missing': (data) =>
    sentences(
      'There is no number here.',
      numberForm,
      data,
      'Enter a number, or - where there is no reading.',
    ),
  'number-unreadable': (data) =>
    sentences(
      `${received(data)} is not a number that can be read.`,
      numberForm,
      data,
      'Write digits with at most one point or comma between them, for example 0.5.',
    ),
  'number-ambiguous': (data) =>
    sentences(
      `${received(data)} has two readings: ${anyOf(list(data['readings']))}.`,
      'a number with one reading',
      data,
      `Write ${anyOf(list(data['readings']))}.`,
    ),
  'number-separator': (data) =>
    sentences(
      `${received(data)} uses "${data['separator']}" as its decimal sign; this field takes "${data['wanted']}".`,
      `"${data['wanted']}" between units and tenths`,
      data,
      `Write "${data['wanted']}" in place of "${data['separator']}".`,
    ),
  'number-too-many-digits': (data) =>
    sentences(
      `${received(data)} has ${data['digits']} significant digits, more digits than can be kept.`,
      `at most ${data['most']} significant digits`,
      data,
      'Round it to the digits that the instrument shows.',
    ),
  'number-too-large': (data) =>
    sentences(
      `${received(data)} is larger than any number that can be kept.`,
      numberForm,
      data,
      'Check the exponent.',
    ),
  'number-too-small': (data) =>
    sentences(
      `${received(data)} is too close to zero to be kept.`,
      numberForm,
      data,
      'Check the exponent, or write 0.',
    ),
  'unit-missing': (data) =>
    sentences(
      `${received(data)} has no unit.`,
      `a number with its unit: ${anyOf(list(data['allowed']))}`,
      data,
      `Add the unit, for example ${example(data)}.`,
    ),
  'unit-unknown': (data) => {
    const near = list(data['nearest']);
    const remedy =
      near.length > 0
        ? `The nearest unit is ${anyOf(near)}; write that if it is meant.`
        : 'Use one of these units.';
    return sentences(
      `"${data['unit']}" is not a unit known here.`,
      anyOf(list(data['allowed'])),
      data,
      remedy,
    );
  },
  'unit-two-readings': (data) =>
    sentences(
      `"${data['unit']}" reads as megalitre, a million litres.`,
      anyOf(list(data['allowed'])),
      data,
      `Write ${anyOf(list(data['nearest']))} for millilitre.`,
    ),
  'unit-of-other-kind': (data) =>
    sentences(
      `"${data['unit']}" is a unit of ${String(data['kind']).replace('-', ' ')}, which is not asked for here.`,
      anyOf(list(data['allowed'])),
      data,
      `Give the value in ${anyOf(list(data['allowed']))}.`,
    ),
  'amount-negative': (data) =>
    sentences(
      `${received(data)} is less than nothing.`,
      'zero or more',
      data,
      'Enter it without a sign. Which way water went, the places say that it came from and went to.',
    ),
  'doubt-not-positive': (data) =>
    sentences(
      `The ± in ${received(data)} is not above zero.`,
      'a ± above zero, for 19 of 20 readings (95 %)',
      data,
      'Give the ± that the method is known for, or leave it out if it is not known.',
    ),
  'time-unreadable': (data) =>
    sentences(
      `${received(data)} is not a time that can be read.`,
      timeForm,
      data,
      'Write the time in one of these forms.',
    ),
  'time-offset-missing': (data) =>
    sentences(
      `${received(data)} does not say by which clock.`,
      'a time that ends in Z (UTC) or in an offset such as +05:30',
      data,
      `Add Z if it is UTC: ${data['received']}Z.`,
    ),
  'time-offset-unreadable': (data) =>
    sentences(
      `"${data['offset']}" is not an offset from UTC.`,
      'Z, or hours and minutes up to 14:00 such as +05:30 or -03:00',
      data,
      'Write Z for UTC, or the offset of the clock that was read.',
    ),
  'time-date-not-in-calendar': (data) =>
    sentences(
      `${received(data)} names a day that is not in the calendar.`,
      `a day of ${data['of']}, which has ${data['lastDay'] || 'no'} days`,
      data,
      'Check month and day.',
    ),
  'time-not-on-clock': (data) =>
    sentences(
      `${received(data)} is not on the clock.`,
      'a time from 00:00 to 23:59',
      data,
      'Check hours and minutes.',
    ),
  'time-second-60': (data) =>
    sentences(
      `${received(data)} has a second 60, and the book's clock has none.`,
      'seconds from 00 to 59',
      data,
      'Write :59 in place of :60.',
    ),
  'time-hour-24': (data) =>
    sentences(
      `${received(data)} has two readings: the end of that day, or a slip.`,
      'a time from 00:00 to 23:59',
      data,
      'Write 00:00 of the next day for midnight.',
    ),
  'time-year-out-of-range': (data) =>
    sentences(
      `${received(data)} lies outside the years that the book keeps.`,
      `a year from ${data['earliest']} to ${data['latest']}`,
      data,
      'Check the year.',
    ),
};
