// English for what the desk says no to, and why; a refusal always tells the way out.
import { type FindingData, formatFigure } from '../../../ground/units/index.ts';
import type { DeskFindingCode } from '../desk-codes.ts';
import type { Sentences, Words, WordsContext } from '../shape.ts';
import { askFirstWords } from './ask-first.ts';
import { bedFindingWords } from './bed-findings.ts';
import { countFindingWords } from './count-findings.ts';
import { listOf, maybeNumber, maybeText, numberOf, textOf } from './data.ts';
import { limitAskWords } from './limits-ask.ts';
import { qualityFindingWords, qualityRefusals } from './quality-findings.ts';
import { reckonFindingWords } from './reckon-findings.ts';
import { refusedDose } from './refused-dose.ts';
import { counted, listed, saidValue } from './said.ts';
import { bareMassOf, say, timeOf, word } from './say.ts';
import { saidHoldReason } from './store-answer.ts';

const nothing = 'Nothing was written.';
const fact =
  'If it has already happened: add --happened "REASON"; the entry is kept, its finding names the rule, and stores whose waters met go on HOLD.';

/** What the rule is about, what it wants, and the way out, for each rule that refuses an intention. */
export interface Refusal {
  readonly why: string;
  readonly expected: string;
  readonly received: string;
  readonly out: string;
}

export type RefusalWords = (data: FindingData, context?: WordsContext) => Refusal;

const look = (store: string): string => `To see why: waterwright store show ${word(store)}.`;

const refusals: ReadonlyMap<string, RefusalWords> = new Map<string, RefusalWords>([
  ...qualityRefusals,
  [
    'hold',
    (data, context) => {
      const from = textOf(data, 'from');
      const since = maybeNumber(data, 'sinceMs') === null ? '' : ` since ${timeOf(data, 'sinceMs', context)}`;
      return {
        why: `${from} is on HOLD ${textOf(data, 'hold')}${since} (${saidHoldReason(textOf(data, 'reason'))})`,
        expected: 'water that is on no hold',
        received: `${from} on HOLD`,
        out: `To see why, and the ways out: waterwright hold show ${word(textOf(data, 'hold'))}. Held water may go into waste.`,
      };
    },
  ],
  [
    'biocide',
    (data) => {
      const { from, to } = { from: textOf(data, 'from'), to: textOf(data, 'to') };
      const has = textOf(data, 'residue') === 'residue' ? 'has a rest of' : 'has';
      return {
        why: `${from} has ${textOf(data, 'comes')} in it and ${to} ${has} ${textOf(data, 'meets')}; the two must not meet, not even in the rest of an emptied container`,
        expected: `a store without ${textOf(data, 'meets')}`,
        received: `${textOf(data, 'comes')} into ${textOf(data, 'meets')}`,
        out: `Take another store, or send it to waste. ${look(to)}`,
      };
    },
  ],
  [
    'grade',
    (data) => {
      const { from, to } = { from: textOf(data, 'from'), to: textOf(data, 'to') };
      const has = maybeText(data, 'fromGrade');
      const wants = maybeText(data, 'toGrade');
      const isUse = wants === to;
      const label = maybeText(data, 'relabelTo');
      const two = data['takesTwo'] === true ? ' --second OFFICE' : '';
      return {
        why: `${has === null ? `the grade of ${from} is not known` : `${from} holds ${has} water`}, and ${isUse ? `that is not for ${to}` : `${to} is for ${wants ?? 'another grade of'} water`}`,
        expected: isUse ? `water for ${to}` : `${wants ?? 'another grade of'} water`,
        received: has === null ? 'grade not known' : has,
        out:
          label === null
            ? `Take water of the right grade: waterwright store list. ${look(from)}`
            : `Take a store for ${label} water: waterwright store list. Or make ${to} one; it stays one: waterwright log relabel ${word(to)} ${word(label)}${two}.`,
      };
    },
  ],
  [
    'conditional',
    (data) => {
      const { from, to } = { from: textOf(data, 'from'), to: textOf(data, 'to') };
      return {
        why: `${from} is CONDITIONAL under ${textOf(data, 'hold')} (${saidHoldReason(textOf(data, 'reason'))}), for an emergency only, and it is asked for ${to}`,
        expected: 'water that is on no hold and not conditional',
        received: `${from}, CONDITIONAL`,
        out: `Take other water, or have it released first: waterwright sample add ${word(from)}, then waterwright hold release ${word(textOf(data, 'hold'))} ${word(from)} --by medic. To see why: waterwright hold show ${word(textOf(data, 'hold'))}.`,
      };
    },
  ],
  [
    'reserve-draw',
    (data) => {
      const { from, by } = { from: textOf(data, 'from'), by: textOf(data, 'by') };
      const may = textOf(data, 'mayBeDrawnBy');
      return {
        why: `${from} is the reserve; at this outpost the ${may} alone draws on it, and this is asked by the ${by}`,
        expected: `the word of the ${may}`,
        received: by,
        out: `Take other water: waterwright store list. If the ${may} says so: add --by ${word(may)}.`,
      };
    },
  ],
  [
    'reserve',
    (data) => {
      const { from, to } = { from: textOf(data, 'from'), to: textOf(data, 'to') };
      const release = textOf(data, 'release');
      return {
        why: `${to} is the reserve, and the water of ${from} has no passed sample of the outpost behind it (${release === 'none' ? 'not released' : release})`,
        expected: 'water released on a sample of the outpost',
        received: release === 'none' ? 'not released' : release,
        out: `Sample it first: waterwright sample add ${word(from)}; when it has passed: waterwright hold release ${word(from)} --by medic. Or fill another store. ${look(from)}`,
      };
    },
  ],
  [
    'capacity',
    (data, context) => {
      const to = textOf(data, 'to');
      const there =
        maybeNumber(data, 'thereMg') === null
          ? ''
          : ` and has ${bareMassOf(data, 'thereMg', context)} in it by the book`;
      const asked = maybeNumber(data, 'massMg') === null ? 'more' : bareMassOf(data, 'massMg', context);
      return {
        why: `${to} holds ${bareMassOf(data, 'capacityMg', context)} at most${there}; ${asked} more does not go in`,
        expected: `room for it below ${bareMassOf(data, 'capacityMg', context)}`,
        received: asked,
        out: `Check the amount and its unit, or take another store. ${look(to)}`,
      };
    },
  ],
  [
    'remainder',
    (data, context) => {
      const from = textOf(data, 'from');
      const usable = maybeNumber(data, 'usableMg') === null ? 'less' : bareMassOf(data, 'usableMg', context);
      return {
        why: `${from} has ${usable} above its usable remainder, and ${bareMassOf(data, 'massMg', context)} was asked for`,
        expected: `at most ${usable}`,
        received: bareMassOf(data, 'massMg', context),
        out: `Take less, or another store. ${look(from)}`,
      };
    },
  ],
  ['dose-maximum', refusedDose],
]);

function refusal(data: FindingData, context?: WordsContext): Sentences {
  const rule = textOf(data, 'rule');
  const words = refusals.get(rule);
  if (words === undefined) throw new Error(`there are no words for the rule ${rule}`);
  const { why, expected, received, out } = words(data, context);
  return say(`Refused: ${why}. ${nothing}`, expected, received, `${out} ${fact}`);
}

const whereToLook: ReadonlyMap<string, string> = new Map([
  ['sample', 'See the samples: waterwright sample list.'],
  ['sample, store or point', 'See the samples: waterwright sample list; the stores: waterwright store list.'],
  ['result', 'See the samples with their results: waterwright sample list.'],
  ['hold', 'See the holds: waterwright hold list.'],
  ['store or point', 'See what there is: waterwright store list; sampling points stand in the outpost file.'],
  ['store', 'See what there is: waterwright store list.'],
  ['store or part', 'See the sheet: waterwright count show.'],
  ['parameter', 'See what was measured: waterwright quality trend.'],
  ['point', 'See what was measured, and where: waterwright quality trend.'],
  ['set of limits', 'See what there is: waterwright quality limits list.'],
  ['row', 'See the rows: waterwright quality limits show SET.'],
  ['entry', 'See the entries with their numbers: waterwright book show.'],
]);

const acts: ReadonlyMap<string, string> = new Map([
  ['fewer held', 'To hold fewer stores than a trace proposes'],
  ['relabel', 'A relabelling'],
  ['waiver', 'A waiver'],
  ['treatment', 'A treatment'],
]);

export const deskWords: Words<DeskFindingCode> = {
  'not-in-book': (data) => {
    const { what, name } = { what: textOf(data, 'what'), name: textOf(data, 'name') };
    const near = listOf(data, 'nearest');
    const otherwise = whereToLook.get(what) ?? 'The names are those of the outpost file.';
    return say(
      `There is no ${what} "${name}" in this book. ${nothing}`,
      `the name of ${/^[aeiou]/.test(what) ? 'an' : 'a'} ${what} of this book`,
      `"${name}"`,
      near.length === 0 ? otherwise : `Did you mean ${listed(near, 'or')}?`,
    );
  },
  'book-not-begun': (data) =>
    say(
      `This book has no ${textOf(data, 'what')} yet.`,
      `${/^[aeiou]/.test(textOf(data, 'what')) ? 'an' : 'a'} ${textOf(data, 'what')}`,
      'none',
      textOf(data, 'what') === 'opening'
        ? 'Enter the opening stocks first: waterwright log opening --from FILE.json, or a field log that begins with them: waterwright import FILE.'
        : 'Make a book from an outpost file with waterwright init, or the practice book with waterwright init --practice.',
    ),
  'intention-refused': (data, _where, context) => refusal(data, context),
  'second-needed': (data) => {
    const act = textOf(data, 'act');
    return say(
      `Refused: ${(acts.get(act) ?? `The act "${act}"`).toLowerCase()} takes two persons at this outpost. ${nothing}`,
      'a second person',
      'one person',
      'Name the second person with --second OFFICE.',
    );
  },
  'second-is-first': (data) =>
    say(
      `Refused: the ${textOf(data, 'office')} is named as the first and as the second person. ${nothing}`,
      'another office for the second person',
      textOf(data, 'office'),
      'Name another person with --second OFFICE.',
    ),
  'before-book': (data, _where, context) =>
    say(
      `${timeOf(data, 'happenedAtMs', context)} is before this book begins, at ${timeOf(data, 'openingMs', context)}. ${nothing}`,
      `a time from ${timeOf(data, 'openingMs', context)} on`,
      timeOf(data, 'happenedAtMs', context),
      'Check day and time. What happened before is a part of the opening stocks.',
    ),
  'in-the-future': (data, _where, context) =>
    say(
      `${timeOf(data, 'happenedAtMs', context)} is later than now, ${timeOf(data, 'nowMs', context)}. ${nothing}`,
      `a time up to ${timeOf(data, 'nowMs', context)}`,
      timeOf(data, 'happenedAtMs', context),
      'Check day, time and offset; a time with Z is UTC.',
    ),
  ...countFindingWords,
  ...reckonFindingWords,
  ...qualityFindingWords,
  'day-closed': (data) =>
    say(
      `Refused: Day ${numberOf(data, 'day')} is closed. ${nothing}`,
      'a day that is open, or a reason',
      `Day ${numberOf(data, 'day')}`,
      'Add --late "REASON": the entry is kept, and the paper of that day stays as it is.',
    ),
  'nothing-to-undo': (data) =>
    say(
      `Of what the ${textOf(data, 'by')} entered in the last ${saidValue(numberOf(data, 'withinMin'), 'min')} nothing is left to take back; an undo without a number goes back no further.`,
      'a young entry, or a number',
      'no number',
      'Name the entry: waterwright log undo NUMBER. The numbers: waterwright book show.',
    ),
  'already-undone': (data) =>
    say(
      `Entry ${textOf(data, 'ref')} was undone before, by entry ${textOf(data, 'by')}. ${nothing}`,
      'an entry that counts',
      textOf(data, 'ref'),
      'If it did happen, enter it again.',
    ),
  'not-correctable': (data) =>
    say(
      `Entry ${textOf(data, 'ref')} (${textOf(data, 'kind')}) has no amount and no reading that could be told anew. ${nothing}`,
      'an entry with an amount, or a line of meters',
      textOf(data, 'kind'),
      `Undo it, and enter it anew: waterwright log undo ${word(textOf(data, 'entryNo'))}.`,
    ),
  ...limitAskWords,
  'field-needed': (data) => {
    const received = maybeText(data, 'received');
    const field = textOf(data, 'field');
    return say(
      received === null ? `"${field}" is missing. ${nothing}` : `"${field}" does not fit. ${nothing}`,
      textOf(data, 'expected'),
      received === null ? 'nothing' : `"${received}"`,
      `Give ${textOf(data, 'expected')}.`,
    );
  },
  'reading-over-capacity': (data, _where, context) =>
    say(
      `${bareMassOf(data, 'massMg', context)} is more than ${textOf(data, 'store')} can hold, ${bareMassOf(data, 'capacityMg', context)}. ${nothing}`,
      `at most ${bareMassOf(data, 'capacityMg', context)}`,
      bareMassOf(data, 'massMg', context),
      'Check the number and its unit. If the reading stands as it is: add --happened "REASON".',
    ),
  ...askFirstWords,
  ...bedFindingWords,
  'day-line-kept': (data) => {
    const ref = maybeText(data, 'ref');
    return say(
      `The line of Day ${numberOf(data, 'day')} is in the book already${ref === null ? '' : `, entry ${ref}`}. ${nothing}`,
      'one line a day',
      'a second one',
      `If the first is wrong: waterwright log undo ${ref === null ? 'NUMBER' : word(ref)}, and enter it again. Its number: waterwright book show --day D${numberOf(data, 'day')}.`,
    );
  },
  'opening-kept': (data, _where, context) =>
    say(
      `This book has its opening stocks already, as of ${timeOf(data, 'openingMs', context)}. ${nothing}`,
      'one opening',
      'a second one',
      'If the first is wrong, undo it and enter it again: waterwright book show --kind opening. What a store holds now is entered as a reading: waterwright log weigh or log gauge.',
    ),
  'name-taken': (data) =>
    say(
      `There is a ${textOf(data, 'what')} "${textOf(data, 'name')}" in this book already. ${nothing}`,
      'a new name',
      `"${textOf(data, 'name')}"`,
      'Give it a name of its own. A name is never used again, so that old entries stay clear.',
    ),
  'format-unknown': (data) =>
    say(
      `${textOf(data, 'file')} is in no format that is known here. ${nothing}`,
      listed(listOf(data, 'formats'), 'or'),
      'another beginning',
      'Check that this is the right file; the formats are described in docs/field-log.md.',
    ),
  'line-not-taken': (data) =>
    say(
      `Not taken: ${textOf(data, 'reason').replace(/\.$/, '')}.`,
      'a line that can be read whole',
      'a line that cannot',
      'Correct it and import the file again: what is in the book already is not added twice.',
    ),
  'cover-out': (data) => {
    const grade = textOf(data, 'grade');
    const name = `${grade.charAt(0).toUpperCase()}${grade.slice(1)}`;
    const middle = numberOf(data, 'q50') < 0.05 ? 'is out' : 'may be out';
    const figure = { value: numberOf(data, 'freeL'), u95: numberOf(data, 'u95L'), unit: 'L' };
    const free = formatFigure(figure, { style: 'screen' });
    return say(
      `${name} water that can be counted on ${middle}: ${free} free, no day in 19 of 20 outcomes.`,
      'days of cover',
      'no day',
      'See where water is left, and what it waits for: waterwright store list.',
    );
  },
  'many-entries': (data) =>
    say(
      `${counted(numberOf(data, 'entries'), 'entry', 'entries')} would be added to the book. ${nothing}`,
      'a yes',
      'no answer yet',
      'To look first: add --dry-run. To add them: add --yes.',
    ),
  'book-not-empty': (data) =>
    say(
      `This book has ${counted(numberOf(data, 'entries'), 'entry', 'entries')} already, and a start needs an empty one. ${nothing}`,
      'an empty book',
      counted(numberOf(data, 'entries'), 'entry', 'entries'),
      'Name another file with --book FILE.',
    ),
  'office-unknown': (data) =>
    say(
      `The outpost file names no office "${textOf(data, 'office')}". ${nothing}`,
      listed(listOf(data, 'offices'), 'or'),
      `"${textOf(data, 'office')}"`,
      'Name one of these with --by OFFICE; offices stand in the outpost file.',
    ),
  'trend-places-clash': (data) =>
    say(
      `A trend is of one place: ${textOf(data, 'first')} and ${textOf(data, 'second')} name two.`,
      'a store, a sampling point or a grade',
      `a ${textOf(data, 'first')} and a ${textOf(data, 'second')}`,
      'Leave one of the two out.',
    ),
  'no-condensate-expectation': (data) => {
    const isNorm = textOf(data, 'missing') === 'norm of vapour';
    return say(
      isNorm
        ? 'How much condensate is to be expected here is not known: the outpost file has no norm of what people give off.'
        : 'How much condensate is to be expected here is not known: the outpost file has no counter of a condenser.',
      isNorm
        ? 'norms.vapourCollectedLPerPersonDay above 0'
        : 'an instrument that meters a unit fed from the cabin air',
      'none',
      'Add it to the outpost file as docs/outpost-file.md shows, and put the file into the book: waterwright book outpost FILE.',
    );
  },
};
