// Table of lines that a field log may not have, or that say less than they should: when every finding about one comes.
import { readFieldLog } from '../../../src/desk/index.ts';
import { msPerDay } from '../../../src/ground/units/index.ts';
import { indexOutpost } from '../../../src/outpost/index.ts';
import type { FieldLogFindingCode } from '../../../src/papers/index.ts';
import { BAD_LINES } from '../../field-log/bad-lines.ts';
import { asLines, CORRIE_INDEX, corrieReader, type LogObject, lineWith } from '../../field-log/corrie-log.ts';
import { few } from './changed-lines.ts';
import { failure, type Sample, type Samples, sample } from './sample.ts';

type Lines = readonly (LogObject | string)[];
type Request = Partial<Parameters<typeof readFieldLog>[1]>;

const readCorrie = corrieReader(readFieldLog);

/** The lines that a finding speaks of, with their numbers, each cut around what counts. */
function linesAt(lines: readonly string[], numbers: readonly (number | undefined)[]): readonly string[] {
  const wanted = [...new Set(numbers.filter((each) => each !== undefined))].sort((a, b) => a - b);
  return wanted.map((number) => `${number}: ${lines[number - 1] ?? ''}`);
}

function read(code: FieldLogFindingCode, lines: Lines, request: Request = {}) {
  const finding = readCorrie(lines, request).findings.findLast((each) => each.code === code);
  const other = finding?.data['otherLine'];
  const texts = asLines(lines);
  const shown = linesAt(texts, [typeof other === 'number' ? other : undefined, finding?.where.line]);
  const whole = texts.length === 0 ? ['(an empty file)'] : few(texts, 3);
  return failure(shown.length === 0 ? whole : shown.map(cut), finding);
}

const LONGEST = 300;

function cut(line: string): string {
  return line.length <= LONGEST ? line : `${line.slice(0, LONGEST)} … (${line.length} signs)`;
}

/** When it comes, and the case of the bad lines that brings it. */
const WHEN: Readonly<Record<Exclude<FieldLogFindingCode, keyof typeof apart>, readonly [string, string]>> = {
  'log-line-too-long': ['A line is longer than any line of a log.', 'more than a million signs'],
  'log-line-torn': ['The file ends in the middle of a line.', 'a torn last line'],
  'log-line-no-json': ['A line is not JSON.', 'a decimal comma'],
  'log-line-no-object': ['A line is JSON and no entry.', 'a list'],
  'log-key-twice': [
    'One field stands twice in one object: one of them would be lost unseen.',
    'a field twice',
  ],
  'log-kind-unknown': ['A line is of a kind that the format does not have.', 'a mistyped kind'],
  'log-field-unknown': [
    'A field that this kind does not have; what it says would be lost.',
    'a mistyped field',
  ],
  'log-field-missing': ['A field without which the line says too little.', 'a missing field'],
  'log-type-wrong': ['A number as text, a list as text, null where it has to be told.', 'a number as text'],
  'log-number-not-finite': ['A number without an end.', '1e400'],
  'log-out-of-range': ['A figure that cannot be.', 'a negative amount'],
  'log-not-in-list': ['A word that is none of those that may stand here.', 'a status of its own'],
  'log-text-form': ['A text that does not have the form of its field.', 'an id with a blank'],
  'log-list-length': ['A list with too few or too many items.', 'no container'],
  'log-one-of': ['Exactly one of two fields belongs here.', 'a result from two places'],
  'log-run-or-status': [
    'Part of a run, but of which, or which part, is not said.',
    'a run without its status',
  ],
  'log-line-content-alone': [
    'Water left in the hose, told of a fill that was not interrupted.',
    'water left in the hose of a whole fill',
  ],
  'log-doubt-alone': ['A doubt without the amount that it belongs to.', 'a doubt of no rest'],
  'log-ends-same': ['Water goes from a store into itself.', 'from a store into itself'],
  'log-time-wrong': ['A time that cannot be read, or that never was.', '30 February'],
  'log-date-wrong': ['The first day of the log is no date.', 'a first day that is not in the calendar'],
  'log-day-differs': ['Day and time of a line do not agree.', 'another day than the time'],
  'log-before-opening': ['It happened before the opening stocks were told.', 'before the opening'],
  'log-time-order': [
    'A start after the end, or a window that ends before it begins.',
    'a start after the end',
  ],
  'log-id-twice': ['One id, two entries that say different things.', 'one id, two entries'],
  'log-line-repeated': ['A line says again what another said.', 'the same line again'],
  'log-opening-missing': ['A log without an opening, for a book without one.', 'no opening'],
  'log-opening-twice': ['A log with a second opening.', 'two openings'],
  'log-format-other': ['The file is of another format.', 'another format'],
  'log-version-newer': ['The log is of a version that this program does not know.', 'a newer version'],
  'log-outpost-other': ['The log is that of another outpost.', 'a log of another outpost'],
  'log-name-unknown': ['A line names what the outpost file does not.', 'an unknown store'],
  'log-vehicle-unknown': ['A visit of a vehicle that nobody has announced.', 'an unknown vehicle'],
  'log-method-unknown': ['An amount told by a method that no instrument stands behind.', 'an unknown method'],
  'log-named-twice': ['One name twice in one list, with two figures.', 'one container twice in a push'],
  'log-counter-unclear': [
    'A draw of which it is open which counter has counted it.',
    'a draw that two counters may have counted',
  ],
  'log-store-differs': [
    'The log says something else of a store than the outpost file.',
    'a store that the outpost file knows otherwise',
  ],
  'log-findings-cut': ['More findings than help anybody.', 'more findings than a screen'],
};

const blank = (count: number): readonly string[] => Array.from({ length: count }, () => '');

/** Those that no single bad line brings. */
const apart = {
  'log-too-many-lines': sample('The log is longer than can be read at once.', () =>
    read('log-too-many-lines', [lineWith('E0001'), ...blank(199_999), lineWith('E0002')]),
  ),
  'log-opening-other': sample('The log counts its days from another date than the book.', () =>
    read('log-opening-other', [lineWith('E0001')], {
      context: { dayOneMs: Date.UTC(2147, 2, 1) - msPerDay },
    }),
  ),
  'log-in-future': sample('A line tells of what has not happened yet, in a book that has a present.', () =>
    read('log-in-future', [lineWith('E0001'), lineWith('E0002')], { nowMs: Date.UTC(2147, 2, 1, 12) }),
  ),
  'log-instrument-missing': sample('A reading for which the outpost file has no instrument.', () => {
    const { outpost } = CORRIE_INDEX;
    const instruments = outpost.instruments.filter(({ logField }) => logField !== 'RH_percent');
    return read('log-instrument-missing', [lineWith('E0001'), lineWith('E0002')], {
      outpost: indexOutpost({ ...outpost, instruments }),
    });
  }),
} satisfies Partial<Samples<FieldLogFindingCode>>;

function ofBadLines(code: FieldLogFindingCode, [when, name]: readonly [string, string]): Sample {
  return sample(when, () => read(code, BAD_LINES[name] as Lines));
}

export const fieldLogSamples: Samples<FieldLogFindingCode> = {
  ...(Object.fromEntries(
    Object.entries(WHEN).map(([code, how]) => [code, ofBadLines(code as FieldLogFindingCode, how)]),
  ) as Record<keyof typeof WHEN, Sample>),
  ...apart,
};
