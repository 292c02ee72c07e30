// English for entries that name what is not there, or tell what cannot be placed.
import type { AccountFindingCode } from '../../../../account/index.ts';
import type { Words } from '../../shape.ts';
import { listOf, maybeText, numberOf, textOf } from '../data.ts';
import { counted, listed, saidClockDifference, saidSpan } from '../said.ts';
import { bareMassOf, entryNo, entryOf, say, timeOf, word } from '../say.ts';

export const nameWords = {
  'store-unknown': (data) => {
    const name = textOf(data, 'name');
    const near = listOf(data, 'nearest');
    const meant =
      near.length === 0
        ? `Correct the name, or add the store: waterwright store add ${word(name)}.`
        : `If ${listed(near, 'or')} is meant: waterwright log undo ${entryNo(data)}, and enter it again.`;
    return say(
      `${entryOf(data)} names ${name}, which is not aboard; what it says of it is in no store's figure.`,
      'a store, a port or an account of this outpost',
      `"${name}"`,
      meant,
    );
  },
  'port-unknown': (data) =>
    say(
      `${entryOf(data)} puts a store on the port ${textOf(data, 'port')}, which the outpost file does not name; no port was changed.`,
      'a port of the outpost file',
      `"${textOf(data, 'port')}"`,
      `Undo it and name the right port: waterwright log undo ${entryNo(data)}.`,
    ),
  'instrument-unknown': (data) =>
    say(
      `${entryOf(data)} has a reading of ${textOf(data, 'name')}, which the outpost file does not name; the reading is kept and moves no water.`,
      'a counter of the outpost file, with its way of water',
      `"${textOf(data, 'name')}"`,
      'Enter it again under the right name, or add the instrument to the outpost file.',
    ),
  'run-unknown': (data) =>
    say(
      `${entryOf(data)} goes on with the run ${textOf(data, 'run')}, whose start is not in the book; its water is not counted.`,
      'a start of that run before it, or from and to in the entry',
      `no start of ${textOf(data, 'run')}`,
      'Enter the start of the run with the time at which it happened: waterwright log run-start --at TIME.',
    ),
  'port-empty': (data) =>
    say(
      `${entryOf(data)} takes water from the port ${textOf(data, 'port')}, where the book has no store; that water stands under "unplaced".`,
      'a store on that port',
      'no store',
      `Say what stood on it, with the time: waterwright log hookup STORE ${word(textOf(data, 'port'))} --at TIME.`,
    ),
  'before-opening': (data, _where, context) =>
    say(
      `${entryOf(data)} happened before the opening of the book (${timeOf(data, 'openingMs', context)}), whose stocks were told after it and have it inside.`,
      `a time from ${timeOf(data, 'openingMs', context)} on`,
      'an earlier time',
      `If its time is a slip: waterwright log undo ${entryNo(data)}, and enter it again.`,
    ),
  'opening-missing': () =>
    say(
      'The book has no opening yet, so no stock is known.',
      'an opening: what each store holds, with its ±',
      'none',
      'Enter it, or import a log that begins with it: waterwright import FILE. To try it first: waterwright init --practice.',
    ),
  'late-in-closed-day': (data) =>
    say(
      `${entryOf(data)} came after Day ${numberOf(data, 'day')} was closed. The paper of that day stands; the figures of today have the entry in them.`,
      'an entry before the close',
      `"${textOf(data, 'late')}"`,
      `Hand the late entry on with the paper of that day: waterwright book show --day D${numberOf(data, 'day')}.`,
    ),
  'duplicate-proposed': (data, where, context) => {
    const [first, second] = [textOf(data, 'firstRef'), textOf(data, 'ref')];
    const pair = `${textOf(data, 'firstEntryNo')} ${entryNo(data)}`;
    const { from, to } = { from: textOf(data, 'from'), to: textOf(data, 'to') };
    return say(
      `${bareMassOf(data, 'massMg', context)} from ${from} to ${to} seems to stand twice in the book, as ${first} and ${second}: ${howApart(data, context)}.${bothWould(data, where.store ?? to, context)} ${second} is left out of the position until somebody decides.`,
      'one entry for one act',
      'two entries that agree',
      `If they are one act: waterwright log decide ${pair} merge. If both happened: waterwright log decide ${pair} both.`,
    );
  },
  'unit-doubt': (data) =>
    say(
      `The note "${textOf(data, 'text')}" (${textOf(data, 'ref')}, by ${textOf(data, 'by')}) has the number ${textOf(data, 'amount')} without a unit: litres and kilograms are both possible. It is kept as a note and counts for nothing.`,
      'an amount with its unit',
      `"${textOf(data, 'amount')}"`,
      `Ask ${textOf(data, 'by')} for the unit, and enter a note with it: waterwright log note.`,
    ),
  'refused-recorded': (data) =>
    say(
      `Not done, because of a rule: ${textOf(data, 'what')} (${textOf(data, 'rule')}). Nothing moved.`,
      'nothing that a rule speaks against',
      textOf(data, 'what'),
      'Nothing is to be done.',
    ),
  'unit-alarm': (data) => {
    const reading = maybeText(data, 'reading');
    const at = [maybeText(data, 'readingName'), reading, maybeText(data, 'readingUnit')].filter(
      (part) => part !== null,
    );
    const shown = reading === null ? '' : ` at ${at.join(' ')}`;
    const state = textOf(data, 'state') === 'failed' ? 'has failed' : 'is in alarm';
    return say(
      `${textOf(data, 'unit')} ${state}${shown} (${textOf(data, 'ref')}).`,
      'a unit in order',
      reading === null ? textOf(data, 'state') : at.join(' '),
      'When it is in order again, enter it: waterwright log unit-condition.',
    );
  },
  'no-reading': (data, _where, context) => {
    const last = timeOf(data, 'lastMs', context);
    const days = numberOf(data, 'days');
    return say(
      `No day line since ${last}: the figures are ${counted(days, 'day')} old.`,
      'a day line each day',
      `none since ${last}`,
      'Read the meters and enter the line: waterwright log day.',
    );
  },
} satisfies Partial<Words<AccountFindingCode>>;

type Data = Parameters<Words<string>[string]>[0];
type Context = Parameters<Words<string>[string]>[2];

/** Three ways in which one act comes into a book twice. */
function howApart(data: Data, context: Context): string {
  const apart = numberOf(data, 'apartMin');
  const times = `(${timeOf(data, 'firstAtMs', context)} and ${timeOf(data, 'atMs', context)})`;
  switch (textOf(data, 'reason')) {
    case 'clock apart':
      return `told by two sources whose clocks differ by ${saidClockDifference(apart)} ${times}`;
    case 'double tap':
      return `entered twice by the same person, ${saidSpan(apart)} apart ${times}`;
    default:
      return `told by two sources, ${saidSpan(apart)} apart ${times}`;
  }
}

function bothWould(data: Data, store: string, context: Context): string {
  if (maybeText(data, 'wouldHoldMg') === null || maybeText(data, 'capacityMg') === null) return '';
  return ` With both, ${store} would hold ${bareMassOf(data, 'wouldHoldMg', context)} against its capacity of ${bareMassOf(data, 'capacityMg', context)}.`;
}
