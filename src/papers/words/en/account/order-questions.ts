// English for times and orders that cannot be, stores that look mistaken for others, and entries that say again what another said.
import type { AccountFindingCode } from '../../../../account/index.ts';
import type { FindingData } from '../../../../ground/units/index.ts';
import type { Words, WordsContext } from '../../shape.ts';
import { listOf, maybeNumber, maybeText, numberOf, textOf } from '../data.ts';
import { counted, listed, saidClockDifference, saidSpan } from '../said.ts';
import { bareMassOf, entryNo, entryOf, say, storeOf, timeOf } from '../say.ts';

const undo = (data: FindingData, what = 'If it is a slip'): string =>
  `${what}: waterwright log undo ${entryNo(data)}, and enter it again. If it is right, nothing is to be done.`;

export const orderQuestionWords = {
  'copy-proposed': (data, _where, context) => {
    const [first, second] = [textOf(data, 'firstRef'), textOf(data, 'ref')];
    const pair = `${textOf(data, 'firstEntryNo')} ${entryNo(data)}`;
    const times = `(${timeOf(data, 'firstAtMs', context)} and ${timeOf(data, 'atMs', context)})`;
    return say(
      `${second} says again what ${first} says, ${saidReason(data)} ${times}. ${second} is left out of the account until somebody decides.`,
      'one entry for one act or reading',
      'two entries that agree',
      `If they are one: waterwright log decide ${pair} merge. If both are true: waterwright log decide ${pair} both.`,
    );
  },
  'time-implausible': (data, where, context) => {
    const [text, expected, received] = saidTimeDoubt(data, where.store ?? null, context);
    return say(
      `${text} It counts as it was entered.`,
      expected,
      received,
      undo(data, 'If the time is a slip'),
    );
  },
  'order-impossible': (data, where, context) => {
    const [text, expected, received] = saidOrderDoubt(data, where.store ?? null, context);
    return say(text, expected, received, undo(data, 'If its time is a slip'));
  },
  'store-doubtful': (data, where, context) => {
    const candidates = listOf(data, 'candidates');
    const [text, expected] = saidStoreDoubt(data, storeOf(where), context);
    const meant = candidates.length === 0 ? '' : ` ${listed(candidates, 'or')} would fit.`;
    return say(
      `${text}${meant} It counts for ${storeOf(where)}, as it was entered.`,
      expected,
      storeOf(where),
      `Look at the label. ${undo(data, 'If another store was meant')}`,
    );
  },
  'people-differ': (data) => {
    const [said, fewest, most] = [numberOf(data, 'said'), numberOf(data, 'fewest'), numberOf(data, 'most')];
    const aboard =
      fewest === most
        ? counted(most, 'person', 'people')
        : `${fewest} to ${counted(most, 'person', 'people')}`;
    return say(
      `${entryOf(data)} counts ${counted(said, 'person', 'people')}; by arrivals and departures ${aboard} ${most === 1 ? 'was' : 'were'} aboard since the line before.`,
      aboard,
      counted(said, 'person', 'people'),
      `If somebody came or went: waterwright log roster --at TIME. If the line has a slip: waterwright log undo ${entryNo(data)}, and enter it again.`,
    );
  },
} satisfies Partial<Words<AccountFindingCode>>;

/** `entry E0035`, in the middle of a sentence. */
function thatEntry(data: FindingData): string {
  return `entry ${textOf(data, 'ref')}`;
}

function saidReason(data: FindingData): string {
  const apart = numberOf(data, 'apartMin');
  switch (textOf(data, 'reason')) {
    case 'clock apart':
      return `told by two sources whose clocks differ by ${saidClockDifference(apart)}`;
    case 'double tap':
      return `entered twice by the same person, ${saidSpan(apart)} apart`;
    default:
      return `told by two sources, ${saidSpan(apart)} apart`;
  }
}

type Three = readonly [text: string, expected: string, received: string];

/** `09:16` of minutes of a day. */
function saidClock(minute: number): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(minute / 60))}:${two(Math.floor(minute % 60))}`;
}

function saidTimeDoubt(data: FindingData, store: string | null, context?: WordsContext): Three {
  const span = (key: string) => saidSpan(numberOf(data, key));
  switch (textOf(data, 'why')) {
    case 'written late':
      return [
        `${entryOf(data)} was entered ${span('minutes')} after it is said to have happened, long after the day line that it was due with.`,
        'an entry with the next day line, or a reason with --late',
        `${span('minutes')} later`,
      ];
    case 'line twice':
      return [
        `${entryOf(data)} is a second day line for Day ${numberOf(data, 'day')}, after ${textOf(data, 'otherRef')} (${timeOf(data, 'otherAtMs', context)}).`,
        'one day line a day',
        'two',
      ];
    case 'line hour':
      return [
        `${entryOf(data)} is a day line ${span('minutes')} away from its time (${timeOf(data, 'dueMs', context)}).`,
        `about ${timeOf(data, 'dueMs', context)}`,
        `${span('minutes')} away`,
      ];
    case 'port empty':
      return [
        `By ${thatEntry(data)}, ${store ?? 'a store'} came onto ${textOf(data, 'port')} ${span('minutes')} after the one before it had come off (${timeOf(data, 'sinceMs', context)}), and no other source was told.`,
        'the next store within two hours',
        span('minutes'),
      ];
    case 'flow length':
      return [
        `${entryOf(data)} has a flow of ${span('minutes')} by the watch, and ${span('spanMin')} between its start and its end.`,
        `about ${span('minutes')} from start to end`,
        span('spanMin'),
      ];
    case 'hose busy':
      return [
        `${entryOf(data)} has water in the hose ${textOf(data, 'hose')} while ${textOf(data, 'otherRef')} has it (${timeOf(data, 'otherStartMs', context)} to ${timeOf(data, 'otherEndMs', context)}).`,
        'one flow at a time through one hose',
        'two',
      ];
    case 'unusual hour': {
      const usual = `${saidClock(numberOf(data, 'fromMinute'))} and ${saidClock(numberOf(data, 'toMinute'))}`;
      const at = saidClock(numberOf(data, 'minute'));
      return [
        `${entryOf(data)} happened at ${at}; the last ${numberOf(data, 'count')} of its kind here were between ${usual}.`,
        `between ${usual}`,
        at,
      ];
    }
    case 'visit day':
      return [
        `${textOf(data, 'visit')} came or went on Day ${numberOf(data, 'day')} (${textOf(data, 'ref')}); Day ${numberOf(data, 'plannedDay')} was planned, and nobody entered a change.`,
        `Day ${numberOf(data, 'plannedDay')}, or an entry that changes it`,
        `Day ${numberOf(data, 'day')}`,
      ];
    default: {
      const fits = timeOf(data, 'fitsAtMs', context);
      return [
        `The counters in ${thatEntry(data)} (${listed(listOf(data, 'instruments'))}) are those of another time of day: ${fits} would fit.`,
        fits,
        `${saidClockDifference(-numberOf(data, 'shiftMin'))} from it`,
      ];
    }
  }
}

function saidOrderDoubt(data: FindingData, store: string | null, context?: WordsContext): Three {
  switch (textOf(data, 'why')) {
    case 'after entered':
      return [
        `${entryOf(data)} is said to have happened at ${timeOf(data, 'happenedAtMs', context)}, after it was entered (${timeOf(data, 'enteredAtMs', context)}). It counts as it was entered.`,
        `a time up to ${timeOf(data, 'enteredAtMs', context)}`,
        timeOf(data, 'happenedAtMs', context),
      ];
    case 'ends before start':
      return [
        `${entryOf(data)} ends at ${timeOf(data, 'endMs', context)} and starts after that, at ${timeOf(data, 'startMs', context)}. It counts as it was entered.`,
        'a start before the end',
        timeOf(data, 'startMs', context),
      ];
    case 'off after on': {
      const by = maybeText(data, 'otherRef');
      const port = textOf(data, 'port');
      return [
        `By ${thatEntry(data)}, ${store ?? 'a store'} comes off ${port}, where ${textOf(data, 'other')} had been put in its place at ${timeOf(data, 'otherAtMs', context)}${by === null ? '' : ` (${by})`}. Both count as they were entered.`,
        'a store that comes off before the next one is put on',
        'the other way round',
      ];
    }
    case 'result before sample':
      return [
        `${entryOf(data)} draws the sample ${textOf(data, 'sample')}, whose result is in the book already. Both count as they were entered.`,
        'a sample before its result',
        'the result first',
      ];
    case 'people before':
      return [
        `${entryOf(data)} changes who is aboard, and the day line ${textOf(data, 'otherRef')} (${timeOf(data, 'otherAtMs', context)}) had counted ${counted(numberOf(data, 'people'), 'person', 'people')} already. Both count as they were entered.`,
        'a line that counts people after they came and before they went',
        `${counted(numberOf(data, 'people'), 'person', 'people')} before`,
      ];
    default:
      return [
        `${entryOf(data)} is the first check of ${textOf(data, 'what')} for ${textOf(data, 'visit')}, after its water had flowed (${timeOf(data, 'movedAtMs', context)}). It counts as it was entered.`,
        'a check before the first flow',
        'the flow first',
      ];
  }
}

function saidStoreDoubt(data: FindingData, store: string, context?: WordsContext): readonly [string, string] {
  const entry = entryOf(data);
  const other = maybeText(data, 'other') ?? 'none';
  const port = maybeText(data, 'port') ?? 'its port';
  const grade = maybeText(data, 'grade') ?? 'unknown';
  switch (textOf(data, 'why')) {
    case 'not on port':
      return [
        `${entry} takes ${store} off ${port}, and it does not stand there by the book.`,
        `the store on ${port}`,
      ];
    case 'empty on feed':
      return [
        `${entry} puts ${store} on ${port}, and it is empty by the book.`,
        `a full store of ${other} water`,
      ];
    case 'full on sink':
      return [`${entry} puts ${store} on ${port}, and it is full by the book.`, 'a store with room'];
    case 'other grade':
      return [
        `${entry} puts ${store} on ${port}, which takes ${other} water; by the book it holds ${grade}.`,
        `a store of ${other} water`,
      ];
    case 'held':
      return [`${entry} puts ${store} on ${port}, and it is on HOLD.`, `a released store of ${other} water`];
    case 'full':
      return [
        `${entry} brings water into ${store}, which holds ${bareMassOf(data, 'massMg', context)} by the book and has no room for it.`,
        'a store with room',
      ];
    case 'emptied already':
      return [
        `${entry} draws the sample ${other} from ${store}, which is empty by the book.`,
        'a store with water in it',
      ];
    case 'sample of other':
      return [
        `${entry} is a result of ${store} for the sample ${other}, which was drawn from another store.`,
        'the store of the sample',
      ];
    case 'not held':
      return [
        `${entry} ends a hold${other === 'none' ? '' : ` (${other})`} on ${store}, which is on none by the book.`,
        'a store on that hold',
      ];
    case 'other label':
      return [
        `${entry} brings ${other} water into ${store}, whose label says ${grade}.`,
        `a store labelled ${other}`,
      ];
    default: {
      const read = maybeNumber(data, 'massMg') === null ? '' : ` at ${bareMassOf(data, 'massMg', context)}`;
      return [
        `${entry} reads ${store}${read}, far from what the book expects of it.`,
        'the store that was read',
      ];
    }
  }
}
