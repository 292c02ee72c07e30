// Table of English for what can be wrong or worth knowing in a field log.
import {
  type FindingData,
  formatDate,
  formatIsoUtc,
  msPerDay,
  type Where,
} from '../../../ground/units/index.ts';
import type { FieldLogFindingCode } from '../field-log-codes.ts';
import type { Sentences, Words } from '../shape.ts';
import { listOf, maybeNumber, maybeText, numberOf, textOf } from './data.ts';
import { counted, listed } from './said.ts';
import { say } from './say.ts';
import { unitsWords } from './units.ts';

/** `Line 12, t: ` */
function at(where: Where): string {
  const place = [where.line === undefined ? '' : `line ${where.line}`, where.field ?? '']
    .filter((part) => part !== '')
    .join(', ');
  return place === '' ? '' : `${place.charAt(0).toUpperCase()}${place.slice(1)}: `;
}

/** A text stands in quotes; what is none stands as it is. */
function quoted(data: FindingData, key = 'received'): string {
  const text = maybeText(data, key) ?? '';
  const kind = maybeText(data, 'receivedKind');
  return kind === null || kind === 'text' ? `"${text}"` : text;
}

/** `Write C-04 if that is meant.`, or what else can be done. */
function meant(near: readonly string[], otherwise: string): string {
  return near.length === 0 ? otherwise : `Write ${listed(near, 'or')} if that is meant.`;
}

const TYPES: Readonly<Record<string, string>> = {
  text: 'a text',
  number: 'a number',
  'whole-number': 'a whole number',
  'yes-no': 'true or false',
  list: 'a list',
  object: 'an object with its own fields',
  null: 'null',
};

/** How a value of the type is written in JSON. */
const WRITE: Readonly<Record<string, string>> = {
  text: 'Write it in quotes.',
  number: 'Write the number without quotes.',
  'whole-number': 'Write a whole number without quotes.',
  'yes-no': 'Write true or false without quotes.',
  list: 'Write it in brackets.',
  object: 'Write it in braces.',
};

const typeOf = (data: FindingData, key: string): string =>
  TYPES[maybeText(data, key) ?? ''] ?? 'another value';

const FORMS: Readonly<Record<string, string>> = {
  id: 'an id of up to 24 letters and digits, with . _ - between them, such as E0035',
  name: 'a name on one line, without blanks at its ends and without hidden signs',
  text: 'a text without hidden signs',
  date: 'a date such as 2147-03-01',
  grade: 'the capital letter of a grade, or - for a store that was never used',
  was: 'the capital letter of a grade, with a 0 behind it if the store had been emptied, or -',
};

const NAMED: Readonly<Record<string, readonly [what: string, among: string]>> = {
  store: ['store', 'a store of the outpost file, or one that a visit brings in this log'],
  port: ['port', 'a port of the outpost file'],
  hose: ['hose', 'a hose of the outpost file'],
  grade: ['grade with the letter', 'the letter of a grade of the outpost file'],
  label: ['label', 'the id of a grade of the outpost file, or its sign'],
  biocide: ['biocide', 'a biocide of the outpost file'],
};

/** `at least 0`, `more than 0`, `at most 90000 signs`. */
function edge(data: FindingData, unit = ''): string {
  const number = textOf(data, 'edge');
  const value = unit === '' ? number : `${number} ${unit}${number === '1' ? '' : 's'}`;
  if (data['side'] === 'most') return `at most ${value}`;
  return data['inclusive'] === false ? `more than ${value}` : `at least ${value}`;
}

const textOfLine = {
  'log-line-too-long': (data, where) =>
    say(
      `${at(where)}this line has ${numberOf(data, 'length')} signs, which no line of a log has.`,
      `at most ${numberOf(data, 'longest')} signs`,
      `${numberOf(data, 'length')} signs`,
      'Look whether line ends were lost when the file was made.',
    ),
  'log-too-many-lines': (data) =>
    say(
      `The log is longer than ${numberOf(data, 'most')} lines, and was read no further.`,
      `at most ${numberOf(data, 'most')} lines`,
      'more lines',
      'Split the file; a second part needs no opening line when it is read into the same book.',
    ),
  'log-line-torn': (data, where) =>
    say(
      `${at(where)}the last line of the file ends in the middle.`,
      'one whole object of JSON',
      `a line that ends with ${quoted(data)}`,
      'Fetch the file again; the lines before are whole.',
    ),
  'log-line-no-json': (data, where) =>
    say(
      `${at(where)}this is not JSON.`,
      'one object of JSON on one line',
      quoted(data),
      'Check quotes, commas and brackets. NaN and numbers with a comma are no JSON.',
    ),
  'log-line-no-object': (data, where) =>
    say(
      `${at(where)}the line holds ${typeOf(data, 'receivedKind')}, and no entry.`,
      'an object with id, t, day and kind',
      typeOf(data, 'receivedKind'),
      'Write one entry a line, in braces.',
    ),
  'log-key-twice': (data, where) =>
    say(
      `${at(where)}the field "${textOf(data, 'key')}" stands twice in one object.`,
      'each field once',
      'the field twice',
      'Take out the wrong one.',
    ),
} satisfies Partial<Words<FieldLogFindingCode>>;

const shapeOfLine = {
  'log-kind-unknown': (data, where) => {
    const received = maybeText(data, 'received');
    const text =
      received === null
        ? 'the line does not say of what kind it is.'
        : `"${received}" is no kind of entry of a field log.`;
    return say(
      at(where) + text,
      'one of the kinds of field log version 1',
      received === null ? 'no kind' : `"${received}"`,
      meant(listOf(data, 'nearest'), 'See docs/field-log.md for the kinds.'),
    );
  },
  'log-field-unknown': (data, where) =>
    say(
      `${at(where)}an entry of kind ${textOf(data, 'kind')} has no field "${textOf(data, 'key')}" here.`,
      listed(listOf(data, 'known'), 'or'),
      `the field "${textOf(data, 'key')}"`,
      meant(listOf(data, 'nearest'), 'Take it out, or put what it says into the note.'),
    ),
  'log-field-missing': (data, where) => {
    const allowed = listOf(data, 'allowed');
    return say(
      `${at(where)}this field is missing; an entry of kind ${textOf(data, 'kind')} needs it.`,
      allowed.length === 0 ? typeOf(data, 'wanted') : listed(allowed, 'or'),
      'no such field',
      data['mayBeNull'] === true ? 'Write it; null says that it was not read.' : 'Write it.',
    );
  },
  'log-type-wrong': (data, where) => {
    const wanted = maybeText(data, 'wanted') ?? '';
    if (data['receivedKind'] === 'null') {
      return say(
        `${at(where)}null says that it was not read, and this field has to be told.`,
        typeOf(data, 'wanted'),
        'null',
        'Write its value, or leave out the line.',
      );
    }
    const isFraction = wanted === 'whole-number' && data['receivedKind'] === 'number';
    return say(
      `${at(where)}${quoted(data)} is ${isFraction ? 'no whole number' : typeOf(data, 'receivedKind')}.`,
      typeOf(data, 'wanted'),
      isFraction ? quoted(data) : typeOf(data, 'receivedKind'),
      isFraction ? 'Check the count.' : (WRITE[wanted] ?? 'Write it as the field asks.'),
    );
  },
  'log-number-not-finite': (_, where) =>
    say(
      `${at(where)}the number is larger than any that can be kept.`,
      'a number within its range',
      'a number without an end',
      'Check the exponent.',
    ),
  'log-out-of-range': (data, where) => {
    const received = textOf(data, 'received');
    const below = received.startsWith('-') && data['side'] === 'least';
    return say(
      `${at(where)}${received} is ${below ? 'less than nothing' : 'outside the range of this field'}.`,
      edge(data),
      received,
      below
        ? 'Write it without a sign; which way water went is said by from and to.'
        : 'Check the digits and the unit.',
    );
  },
  'log-not-in-list': (data, where) =>
    say(
      `${at(where)}${quoted(data)} is none of the words that stand here.`,
      listed(listOf(data, 'allowed'), 'or'),
      quoted(data),
      meant(listOf(data, 'nearest'), 'Write one of these.'),
    ),
  'log-text-form': (data, where) => {
    const form = textOf(data, 'form');
    const isLength = form === 'length';
    return say(
      isLength
        ? `${at(where)}the text has ${counted(numberOf(data, 'length'), 'sign')}.`
        : `${at(where)}${quoted(data)} does not have the form of this field.`,
      isLength ? edge(data, 'sign') : (FORMS[form] ?? 'a text'),
      quoted(data),
      isLength ? 'Put what is too much into the note.' : 'Write it in this form.',
    );
  },
  'log-list-length': (data, where) =>
    say(
      `${at(where)}the list has ${counted(numberOf(data, 'received'), 'item')}.`,
      edge(data, 'item'),
      counted(numberOf(data, 'received'), 'item'),
      'Check the list; an entry with more can be written as two.',
    ),
} satisfies Partial<Words<FieldLogFindingCode>>;

const partsOfLine = {
  'log-one-of': (data, where) =>
    say(
      `${at(where)}one of ${listed(listOf(data, 'fields'))} says where it comes from, and only one.`,
      `either ${listed(listOf(data, 'fields'), 'or')}`,
      numberOf(data, 'has') === 0 ? 'none of them' : 'both of them',
      numberOf(data, 'has') === 0 ? 'Write the one that is right.' : 'Keep the one that is right.',
    ),
  'log-run-or-status': (data, where) =>
    say(
      `${at(where)}a fill in several parts needs both its run and its status.`,
      'run, and status interrupted or resumed',
      `only ${quoted(data, 'has')}`,
      'Write the other one, or take out both for a fill in one go.',
    ),
  'log-line-content-alone': (data, where) =>
    say(
      `${at(where)}water stays in the hose only when a fill is interrupted.`,
      'status interrupted beside it',
      `${numberOf(data, 'received')} L in the hose`,
      'Write run and status, or take it out.',
    ),
  'log-doubt-alone': (data, where) =>
    say(
      `${at(where)}a doubt stands here without the amount that it belongs to; it was left out, and the rest is kept.`,
      'an amount and its doubt, or none of them',
      `only the doubt, ${numberOf(data, 'received')} L`,
      'Nothing needs to be done; if there was a reading, write it as an entry of its own.',
    ),
  'log-ends-same': (data, where) =>
    say(
      `${at(where)}the water comes from ${textOf(data, 'name')} and goes to ${textOf(data, 'name')}.`,
      'two stores',
      `${textOf(data, 'name')} twice`,
      'Correct from or to.',
    ),
  'log-named-twice': (data, where) =>
    say(
      `${at(where)}${textOf(data, 'name')} stands twice in one list, with two figures.`,
      'each name once',
      `${textOf(data, 'name')} twice`,
      'Keep the figure that is right.',
    ),
} satisfies Partial<Words<FieldLogFindingCode>>;

/** A time that the one reader of times refused: its own sentences, with the place in front. */
function wrongTime(data: FindingData, where: Where): Sentences {
  const words = new Map(Object.entries(unitsWords)).get(textOf(data, 'problem'));
  if (words === undefined) throw new TypeError(`no words for ${textOf(data, 'problem')}`);
  const { text, received, remedy } = words(data, where);
  const isForm = data['problem'] === 'time-unreadable';
  return say(
    at(where) + text,
    'a time such as 2147-04-15T21:00Z',
    received,
    isForm ? 'Write it in this form.' : remedy,
  );
}

const timesOfLine = {
  'log-time-wrong': wrongTime,
  'log-date-wrong': (data, where) =>
    say(
      `${at(where)}${quoted(data)} cannot be the first day of a log.`,
      'a date of the calendar from 1970 to 2999',
      quoted(data),
      'Write the date of Day 1.',
    ),
  'log-day-differs': (data, where) =>
    say(
      `${at(where)}the line says day ${numberOf(data, 'said')}, and its time ${textOf(data, 't')} lies on day ${numberOf(data, 'day')}.`,
      `day ${numberOf(data, 'day')}, or a time on day ${numberOf(data, 'said')}`,
      `day ${numberOf(data, 'said')}`,
      'Correct the one that is wrong.',
    ),
  'log-before-opening': (data, where) =>
    say(
      `${at(where)}this happened before the stocks of the opening were told.`,
      `${formatIsoUtc(numberOf(data, 'asOfMs'))} or later`,
      textOf(data, 't'),
      'Check the date; what happened before is inside the opening stocks.',
    ),
  'log-in-future': (data, where) =>
    say(
      `${at(where)}this lies in the future: it is ${formatIsoUtc(numberOf(data, 'nowMs'))} now.`,
      `${formatIsoUtc(numberOf(data, 'nowMs'))} or earlier`,
      textOf(data, 't'),
      'Check day, hour and clock of the line: another day, the other half of the day, or the ground\u2019s clock.',
    ),
  'log-time-order': (data, where) =>
    say(
      `${at(where)}${quoted(data)} lies on the wrong side of the line's own time.`,
      `${formatIsoUtc(numberOf(data, 'happenedAtMs'))} or ${data['side'] === 'before' ? 'earlier' : 'later'}`,
      quoted(data),
      'Correct this time or t.',
    ),
  'log-id-twice': (data, where) =>
    say(
      `${at(where)}${textOf(data, 'ref')} is also the id of line ${numberOf(data, 'otherLine')}, which says something else; none of them was taken.`,
      'another id for another entry',
      `${textOf(data, 'ref')} twice`,
      'Take out the wrong line, or give one of them an id of its own.',
    ),
  'log-line-repeated': (data, where) =>
    say(
      `${at(where)}this line says again what line ${numberOf(data, 'otherLine')} said; ${textOf(data, 'ref')} counts once.`,
      'each entry once',
      'the same entry again',
      'Nothing needs to be done.',
    ),
} satisfies Partial<Words<FieldLogFindingCode>>;

const wholeLog = {
  'log-opening-missing': () =>
    say(
      `The log has no opening line, and this book has no opening yet.`,
      'a line of kind opening_balance',
      'none',
      'Read in the part of the log that begins with the opening first.',
    ),
  'log-opening-twice': (data, where) =>
    say(
      `${at(where)}the log has an opening already, in line ${numberOf(data, 'otherLine')}.`,
      'one opening',
      'a second one',
      'Write readings or a stock count in place of a second opening.',
    ),
  'log-opening-other': (data, where) =>
    say(
      `${at(where)}this log counts its days from another date than the book does.`,
      formatDate(numberOf(data, 'wantedMs') / msPerDay),
      formatDate(numberOf(data, 'receivedMs') / msPerDay),
      'Read it into a book of its own.',
    ),
  'log-format-other': (data, where) =>
    say(
      `${at(where)}this is a file of the format ${quoted(data)}.`,
      `"${textOf(data, 'wanted')}"`,
      quoted(data),
      'Choose the command for that format.',
    ),
  'log-version-newer': (data, where) =>
    say(
      `${at(where)}the log is of version ${textOf(data, 'received')}, which came after this program.`,
      `version ${textOf(data, 'known')}`,
      `version ${textOf(data, 'received')}`,
      'Use a newer program, or have the log written in this version.',
    ),
  'log-outpost-other': (data, where) =>
    say(
      `${at(where)}this is a log of ${textOf(data, 'received')}, and the book is that of ${textOf(data, 'wanted')}.`,
      textOf(data, 'wanted'),
      textOf(data, 'received'),
      'Choose the book of that outpost, or check the name in the outpost file.',
    ),
  'log-findings-cut': (data) =>
    say(
      `There are ${numberOf(data, 'left')} more findings about this log.`,
      `at most ${numberOf(data, 'kept')} findings shown`,
      `${numberOf(data, 'kept') + numberOf(data, 'left')} findings`,
      'Mend the ones shown first; often many have one cause.',
    ),
} satisfies Partial<Words<FieldLogFindingCode>>;

const againstOutpost = {
  'log-name-unknown': (data, where) => {
    const [what, among] = NAMED[textOf(data, 'what')] ?? ['name', 'a known name'];
    return say(
      `${at(where)}the outpost has no ${what} "${textOf(data, 'name')}".`,
      among,
      `"${textOf(data, 'name')}"`,
      meant(listOf(data, 'nearest'), 'Correct the name, or add it to the outpost file.'),
    );
  },
  'log-vehicle-unknown': (data, where) =>
    say(
      `${at(where)}no visit of "${textOf(data, 'name')}" is known; the entry is kept as it stands.`,
      'a vehicle of the roster, or one that has arrived',
      `"${textOf(data, 'name')}"`,
      meant(listOf(data, 'nearest'), 'Check the name; if it is right, nothing needs to be done.'),
    ),
  'log-method-unknown': (data, where) => {
    const hose = maybeText(data, 'hose');
    const here = data['named'] === true && hose !== null ? ` on hose ${hose}` : '';
    return say(
      `${at(where)}no instrument is behind the method "${textOf(data, 'method')}"${here}; the amount is kept with a wide doubt.`,
      listed(listOf(data, 'known'), 'or') || 'a method that the outpost file names',
      `"${textOf(data, 'method')}"`,
      'Give the instrument this word as logMethod in the outpost file, with the hoses that it sits on.',
    );
  },
  'log-instrument-missing': (data, where) =>
    say(
      `${at(where)}${numberOf(data, 'value')} was read, and the outpost file ties no instrument to this field.`,
      `an instrument with logField ${textOf(data, 'logField')}, or null`,
      `${numberOf(data, 'value')}`,
      'Give the instrument this field as logField in the outpost file.',
    ),
  'log-counter-unclear': (data, where) => {
    const counters = listOf(data, 'counters');
    const many = counters.length > 1;
    return say(
      many
        ? `${at(where)}${counted(counters.length, 'counter')} count water from "${textOf(data, 'port')}", so it is open which of them has counted this.`
        : `${at(where)}no counter counts water from "${textOf(data, 'port')}".`,
      'a port whose water one counter counts',
      many ? listed(counters) : 'none',
      'Write it as a transfer, or check the routes of the instruments in the outpost file.',
    );
  },
  'log-store-differs': (data, where) => {
    const written = maybeNumber(data, 'written');
    const file = written === null ? 'does not say' : `says ${written} L`;
    return say(
      `${at(where)}the log says ${numberOf(data, 'said')} L of ${textOf(data, 'store')}, and the outpost file ${file}.`,
      written === null ? `${textOf(data, 'key')} in the outpost file` : `${written} L`,
      `${numberOf(data, 'said')} L`,
      'The outpost file is reckoned with; correct it if the log is right.',
    );
  },
} satisfies Partial<Words<FieldLogFindingCode>>;

export const fieldLogWords: Words<FieldLogFindingCode> = {
  ...textOfLine,
  ...shapeOfLine,
  ...partsOfLine,
  ...timesOfLine,
  ...wholeLog,
  ...againstOutpost,
};
