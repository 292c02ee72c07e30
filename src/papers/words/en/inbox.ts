// English for tables, their lines and their cells: what is doubtful, what it could be, and what settles it.
import type { FindingData, Where } from '../../../ground/units/index.ts';
import type { InboxFindingCode } from '../inbox-codes.ts';
import type { Words } from '../shape.ts';
import { listOf, maybeNumber, maybeText, numberOf, textOf } from './data.ts';
import { counted, listed, saidValue, saidValueAt } from './said.ts';
import { bareMassOf, say, timeOf } from './say.ts';

const waits = 'The line waits in the inbox.';
const received = (data: FindingData): string => `"${textOf(data, 'received')}"`;
const under = ({ field }: Where): string => (field === undefined ? 'The cell' : `"${field}"`);
/** Of a line that has its number in the book already, the command names it. */
const number = (data: FindingData): string => maybeText(data, 'lineNo') ?? 'NUMBER';
const take = (data: FindingData): string => `waterwright inbox take ${number(data)}`;
const drop = (data: FindingData, reason = 'REASON'): string =>
  `waterwright inbox drop ${number(data)} --reason "${reason}"`;
const near = (names: readonly string[], otherwise: string): string =>
  names.length === 0 ? otherwise : `Did you mean ${listed(names, 'or')}? ${otherwise}`;

/** `as L it is 430 L, as kg 431 L, as lb 195 L`: what the bare number would be in each unit. */
export function saidReadings(
  readings: readonly { readonly unit: string; readonly litres: number }[],
): string {
  return readings
    .map(
      ({ unit, litres }, k) =>
        `as ${unit} ${k === 0 ? 'it is ' : ''}${saidValueAt(litres, litres < 100 ? -1 : 0, 'L')}`,
    )
    .join(', ');
}

/** `C-01 holds 22 L` */
export function saidCapacity(store: string | null, capacityL: number | null): string {
  return store === null || capacityL === null ? '' : `; ${store} holds ${saidValue(capacityL, 'L')}`;
}

function readingsIn(data: FindingData): string {
  const readings = Object.entries(data).flatMap(([key, value]) =>
    key.startsWith('as ') && typeof value === 'number' ? [{ unit: key.slice(3), litres: value }] : [],
  );
  const said = saidReadings(readings);
  const capacity = saidCapacity(maybeText(data, 'store'), maybeNumber(data, 'capacityL'));
  return said === '' ? '' : ` A${said.slice(1)}${capacity}.`;
}

const sheetWords: Pick<Words<InboxFindingCode>, Extract<InboxFindingCode, `sheet-${string}`>> = {
  'sheet-no-headings': (data) =>
    say(
      `No line among the first ${numberOf(data, 'lines')} says what the columns are.`,
      'a line of headings above the first line of data',
      'none',
      'Put a line with the names of the columns above the data, such as "time", "what", "store", "amount (L)", and import it again.',
    ),
  'sheet-no-time': (data) =>
    say(
      'No column says when.',
      'a column called date, time or day',
      listed(listOf(data, 'headings')),
      'Name the column: --columns "HEADING=date", "HEADING=time" or "HEADING=day".',
    ),
  'sheet-no-kind': (data) =>
    say(
      'The columns are neither meters of this outpost nor acts.',
      'meters by name, or a column of acts (move, fill, weigh, empty, …), or from, to and amount',
      listed(listOf(data, 'headings')),
      'Name the columns: --columns "HEADING=MEANING"; a meaning is act, store, from, to, amount, or the name of a meter or a store.',
    ),
  'sheet-columns-clash': (data) =>
    say(
      `Two columns mean ${textOf(data, 'means')}: ${listed(listOf(data, 'headings').map((each) => `"${each}"`))}.`,
      'one column for it',
      'two',
      'Leave one out: --columns "HEADING=", or give it its own meaning: --columns "HEADING=MEANING".',
    ),
  'sheet-heading-open': (data) =>
    say(
      `"${textOf(data, 'heading')}" can mean ${listed(listOf(data, 'meanings'), 'or')}.`,
      'one meaning',
      listed(listOf(data, 'meanings')),
      `Say which: --columns "${textOf(data, 'heading')}=MEANING".`,
    ),
  'sheet-heading-unknown': (data) =>
    say(
      `"${textOf(data, 'heading')}" names nothing that is known here; its cells are kept in the note of each entry.`,
      'a meter, a store, or a word such as date, what, amount',
      `"${textOf(data, 'heading')}"`,
      near(
        listOf(data, 'nearest'),
        `To give it a meaning: --columns "${textOf(data, 'heading')}=MEANING"; to leave it out: --columns "${textOf(data, 'heading')}=".`,
      ),
    ),
  'sheet-meaning-unknown': (data) =>
    say(
      `${received(data)} is no meaning of a column.`,
      'time, date, clock, day, act, store, from, to, port, amount, doubt, unit, use, grade, people, person, note, by, or the name of a meter or a store; a unit may stand behind it, as in "amount [L]"',
      received(data),
      near(listOf(data, 'nearest'), 'The names of meters and stores are those of the outpost file.'),
    ),
  'sheet-heading-missing': (data) =>
    say(
      `There is no column ${received(data)}.`,
      listed(
        listOf(data, 'headings').map((each) => `"${each}"`),
        'or',
      ),
      received(data),
      'Name a heading as it stands in the table.',
    ),
  'sheet-dates-open': (data) =>
    say(
      `Day and month cannot be told apart: ${received(data)} fits both, and so does every other date of the table.`,
      'one order, declared or proven',
      received(data),
      'Say which comes first: --dates day-first or --dates month-first.',
    ),
  'sheet-zone-open': (data) =>
    say(
      `Every line stands at about ${textOf(data, 'clock')}. The line of this outpost is at ${textOf(data, 'lineAt')}, and a clock at ${textOf(data, 'offset')} shows ${textOf(data, 'clock')} then.`,
      'the clock that the table is written by',
      'times without one',
      `Say which clock: --zone ${textOf(data, 'offset')}, or --zone UTC for the times as they stand.`,
    ),
  'sheet-zone-unsaid': (data) =>
    say(
      `No clock is named in this table: its times are read by the clock of the outpost, UTC${textOf(data, 'offset')}.`,
      'the clock that the table is written by',
      'times without one',
      'If it was written by another clock, name it: --zone +05:30.',
    ),
};

const cellWords: Pick<Words<InboxFindingCode>, Extract<InboxFindingCode, `cell-${string}`>> = {
  'cell-unit-missing': (data, where) =>
    say(
      `${under(where)} is ${received(data)}, without a unit.${readingsIn(data)} ${waits}`,
      'an amount with its unit, in the cell or in the heading',
      received(data),
      `Say the unit: ${take(data)} --unit L. For the whole column: --columns "${where.field ?? 'HEADING'}=amount [L]" with the import.`,
    ),
  'cell-two-readings': (data, where) =>
    say(
      `${under(where)} is ${received(data)}, which is ${listed(listOf(data, 'readings'), 'or')}. ${waits}`,
      'a number with one reading',
      received(data),
      `Say the decimal sign of the table: --decimal point or --decimal comma with the import; or this one: ${take(data)} --set "${where.field ?? 'HEADING'}=${listOf(data, 'readings')[0] ?? 'VALUE'}".`,
    ),
  'cell-no-number': (data, where) =>
    say(
      `${under(where)} is ${received(data)}, which is not one plain number. ${waits}`,
      'a number, or nothing where nothing was read',
      received(data),
      `Say the number: ${take(data)} --set "${where.field ?? 'HEADING'}=VALUE".`,
    ),
  'cell-formula': (data, where) =>
    say(
      `${under(where)} is the formula ${received(data)}; it stays a text, and nothing is worked out. ${waits}`,
      'the number that it gives',
      received(data),
      `Say the number: ${take(data)} --set "${where.field ?? 'HEADING'}=VALUE".`,
    ),
  'cell-unit-other': (data, where) =>
    say(
      `${under(where)} is ${received(data)}, and ${textOf(data, 'unit')} is no unit for it. ${waits}`,
      listed(listOf(data, 'allowed'), 'or'),
      textOf(data, 'unit'),
      `Say it in a unit of these: ${take(data)} --set "${where.field ?? 'HEADING'}=VALUE UNIT".`,
    ),
  'cell-negative': (data, where) =>
    say(
      `${under(where)} is ${received(data)}, less than nothing. ${waits}`,
      'nothing or more',
      received(data),
      `Say the right one: ${take(data)} --set "${where.field ?? 'HEADING'}=VALUE".`,
    ),
  'cell-over-capacity': (data, where, context) =>
    say(
      `${under(where)} is ${received(data)}${/\dL?$| L$/.test(textOf(data, 'received')) ? '' : `, ${bareMassOf(data, 'massMg', context)}`}; ${textOf(data, 'store')} holds ${bareMassOf(data, 'capacityMg', context)} at most. ${waits}`,
      `at most ${bareMassOf(data, 'capacityMg', context)}`,
      bareMassOf(data, 'massMg', context),
      `Check number, unit and store: ${take(data)} --set "${where.field ?? 'HEADING'}=VALUE UNIT". If it stands as it is: ${take(data)} --happened "REASON".`,
    ),
  'cell-below-last': (data) => {
    const [value, last] = [saidValue(numberOf(data, 'value'), ''), saidValue(numberOf(data, 'last'), '')];
    return say(
      `${textOf(data, 'instrument')} reads ${value}, below the ${last} before it, and it counts upwards only. ${waits}`,
      `${last} or more`,
      value,
      `Check the number: ${take(data)} --set "HEADING=VALUE". If it was replaced or set back: ${take(data)} --happened "REASON".`,
    );
  },
  'cell-name-unknown': (data, where) =>
    say(
      `There is no ${textOf(data, 'what')} ${received(data)} in this book. ${waits}`,
      `a ${textOf(data, 'what')} of this book`,
      received(data),
      near(listOf(data, 'nearest'), `Say which: ${take(data)} --set "${where.field ?? 'HEADING'}=NAME".`),
    ),
  'cell-date-two-readings': (data, where) =>
    say(
      `${under(where)} is ${received(data)}: day or month may come first, and the table does not tell. ${waits}`,
      'a date with one reading',
      received(data),
      `Write it as 2147-04-01: ${take(data)} --set "${where.field ?? 'HEADING'}=DATE".`,
    ),
  'cell-time-unreadable': (data, where) =>
    say(
      `${under(where)} is ${received(data)}, which is no time of the calendar. ${waits}`,
      'a date such as 2147-04-01, 1 Apr 2147 or D32, a clock such as 14:05',
      received(data),
      `Say when: ${take(data)} --set "${where.field ?? 'HEADING'}=DATE".`,
    ),
  'cell-time-outside': (data, _where, context) => {
    const isBefore = textOf(data, 'side') === 'before';
    const limit = timeOf(data, 'limitMs', context);
    return say(
      `${received(data)} is ${timeOf(data, 'happenedAtMs', context)}, ${isBefore ? `before this book begins, at ${limit}` : `later than now, ${limit}`}. ${waits}`,
      isBefore ? `a time from ${limit} on` : `a time up to ${limit}`,
      received(data),
      `Check day, month, year and clock: ${take(data)} --set "HEADING=DATE". What is not for this book: ${drop(data)}.`,
    );
  },
  'cell-year-open': (data, where) =>
    say(
      `${under(where)} is ${received(data)}, without a whole year, and ${numberOf(data, 'years') === 0 ? 'no year of this book has it' : 'it fits more than one year of this book'}. ${waits}`,
      'a date with its year',
      received(data),
      `Say the whole date: ${take(data)} --set "${where.field ?? 'HEADING'}=2147-04-01".`,
    ),
  'cell-missing': (data, where) =>
    say(
      `${where.field === undefined ? 'A cell' : `"${where.field}"`} is empty, and the line needs its ${textOf(data, 'means')}. ${waits}`,
      `the ${textOf(data, 'means')}`,
      'nothing',
      `Say it: ${take(data)} --set "${textOf(data, 'means')}=VALUE".`,
    ),
  'cell-act-unknown': (data) =>
    say(
      `${received(data)} is no act that is known here. ${waits}`,
      'move, fill, drink, use, make, weigh, gauge, empty, full, hookup or note',
      received(data),
      near(listOf(data, 'nearest'), `Say what was done: ${take(data)} --act move.`),
    ),
  'cell-unused': (data, where) =>
    say(
      `${under(where)} is ${received(data)}, and the act "${textOf(data, 'act')}" has no part for it. ${waits}`,
      'an act and cells that fit each other',
      received(data),
      `Say what is meant: ${take(data)} --set "${where.field ?? 'HEADING'}=" leaves it out, --act ACT changes the act.`,
    ),
  'cell-too-long': (data) =>
    say(
      `A note of ${numberOf(data, 'length')} letters is too long for an entry: ${received(data)}. ${waits}`,
      `at most ${numberOf(data, 'most')} letters`,
      `${numberOf(data, 'length')} letters`,
      'Shorten it in the table and import it again, and drop this line.',
    ),
};

const rowWords: Pick<Words<InboxFindingCode>, Extract<InboxFindingCode, `row-${string}`>> = {
  'row-days-differ': (data) =>
    say(
      `The line calls itself day ${textOf(data, 'day')}, and its date is Day ${numberOf(data, 'other')}. ${waits}`,
      'day and date that agree',
      textOf(data, 'day'),
      `Say the day: ${take(data)} --set "day=D${numberOf(data, 'other')}".`,
    ),
  'row-twice': (data) =>
    say(
      `This line says the same as line ${numberOf(data, 'line')}: one act written twice, or two acts. ${waits}`,
      'an act that is told once',
      `line ${numberOf(data, 'line')} again`,
      `If it happened twice: ${take(data)}. If it was written twice: ${drop(data, 'written twice')}.`,
    ),
  'row-ends-same': (data) =>
    say(
      `Water goes from ${textOf(data, 'name')} into itself. ${waits}`,
      'two places',
      textOf(data, 'name'),
      `Say where it came from or went: ${take(data)} --from PLACE.`,
    ),
  'row-total': (data) =>
    say(
      `A line that begins with ${received(data)} sums up others; the book adds up by itself. ${waits}`,
      'a line about one day or one act',
      received(data),
      `Drop it: ${drop(data, 'a sum')}.`,
    ),
  'row-too-wide': (data) =>
    say(
      `The line has ${counted(numberOf(data, 'cells'), 'cell')} under ${counted(numberOf(data, 'headings'), 'heading')}. ${waits}`,
      `at most ${counted(numberOf(data, 'headings'), 'cell')}`,
      counted(numberOf(data, 'cells'), 'cell'),
      'A sign inside a text may part it in two: quote that cell in the table and import it again, and drop this line.',
    ),
  'row-day-kept': (data) => {
    const ref = maybeText(data, 'ref');
    const line = maybeNumber(data, 'line');
    const there =
      ref === null ? `line ${line ?? 0} of this table says another` : `the book has one, entry ${ref}`;
    return say(
      `Day ${numberOf(data, 'day')} has one line, and ${there}. ${waits}`,
      'one line a day',
      'a second one',
      ref === null
        ? `Take the right one and drop the other: ${take(data)}, ${drop(data)}.`
        : `If the book is wrong: waterwright log undo ${ref.replace(' ', ':')}, then ${take(data)}. Else drop it.`,
    );
  },
  'row-day-closed': (data) =>
    say(
      `Day ${numberOf(data, 'day')} is closed. ${waits}`,
      'a day that is open, or a reason',
      `Day ${numberOf(data, 'day')}`,
      `Say why it comes late: ${take(data)} --late "REASON"; for a whole table, --late "REASON" with the import.`,
    ),
};

export const inboxWords: Words<InboxFindingCode> = {
  ...sheetWords,
  ...cellWords,
  ...rowWords,
  'note-unit-missing': (data) =>
    say(
      `A note names ${received(data)} without a unit: "${textOf(data, 'text')}".`,
      'an amount with its unit',
      received(data),
      `Ask who wrote it, then say the unit: ${take(data)} --unit kg; the note is told anew with it. It never becomes an amount by itself.`,
    ),
  'lines-waiting': (data) =>
    say(
      `${counted(numberOf(data, 'lines'), 'line waits', 'lines wait')} in the inbox since Day ${numberOf(data, 'oldestDay')}.`,
      'every line taken or dropped',
      counted(numberOf(data, 'lines'), 'line'),
      'See why, and take or drop each: waterwright inbox list.',
    ),
  'line-not-waiting': (data) =>
    say(
      `${received(data)} is no line of the inbox. Nothing was written.`,
      'the number of a line that waits',
      received(data),
      'See the lines with their numbers: waterwright inbox list.',
    ),
  'line-settled': (data) =>
    say(
      `Line ${textOf(data, 'ref')} was ${textOf(data, 'how')} before, by entry ${textOf(data, 'by')}. Nothing was written.`,
      'a line that still waits',
      textOf(data, 'how'),
      `If that was wrong: waterwright log undo ${textOf(data, 'by').replace(' ', ':')}, and the line waits again.`,
    ),
  'line-still-doubtful': (data) =>
    say(
      'The line says nothing that an entry could be made of. Nothing was written.',
      'a line that says something',
      'none',
      `Say what it means: ${take(data)} --set "HEADING=VALUE"; or drop it: ${drop(data)}.`,
    ),
  'many-lines': (data) =>
    say(
      `${counted(numberOf(data, 'lines'), 'line')} of the table would be added to the book. Nothing was written.`,
      'a yes',
      'no answer yet',
      'To look first: add --dry-run. To add them: add --yes.',
    ),
};
