// English for what breaks a rule about water: grades, biocides, holds, the reserve, acts for two persons.
import type { AccountFindingCode } from '../../../../account/index.ts';
import type { Words } from '../../shape.ts';
import { listOf, maybeNumber, numberOf, textOf } from '../data.ts';
import { counted, listed } from '../said.ts';
import { bareMassOf, entryNo, entryOf, keptBecause, massOf, say, storeOf, timeOf, word } from '../say.ts';
import { saidHoldReason } from '../store-answer.ts';

const look = (store: string): string => `waterwright store show ${word(store)}`;
/** `silver: below` in words. */
export function saidLack(reason: string): string {
  const [parameter = '', code] = reason.split(': ');
  if (code === undefined) return lacks.get(parameter) ?? parameter;
  return `${parameter} ${lacks.get(code) ?? code}`;
}

/** Two rows of one parameter lack the same: it is said once. */
function saidLacksIn(data: Parameters<typeof textOf>[0]): string {
  return listed([...new Set(listOf(data, 'reasons').map(saidLack))]);
}

const lacks: ReadonlyMap<string, string> = new Map([
  ['above', 'above its limit'],
  ['below', 'below its limit'],
  ['censored-across-limit', 'so coarsely read that nobody can say'],
  ['unit-or-basis', 'in a unit or on a basis that cannot be compared'],
  ['no-figure', 'without a figure'],
  ['future', 'of a sample that is not drawn yet'],
  ['contradictory', 'contradicts itself'],
  ['row-off', 'has no limit set'],
  ['not-known', 'is known by results of the water alone'],
  ['not-treated', 'is brought back by a treatment of two persons alone'],
  ['nothing-required', 'the outpost requires no limit for it'],
  ['missing', 'was not measured'],
  ['unverified', 'is not verified'],
  ['expired', 'is too old'],
  ['older-water', 'is of water from before it was filled or dosed'],
  ['not-degassed', 'was read with gas in the water'],
]);

function treatmentWhy(data: Parameters<typeof textOf>[0]): string {
  switch (textOf(data, 'why')) {
    case 'no such recipe':
      return 'the outpost file has no such recipe';
    case 'not allowed':
      return 'the outpost file does not allow it';
    case 'other grade':
      return 'that recipe makes another grade';
    default:
      return `the store has held ${listed(listOf(data, 'neverHeld'))} water, or one of them`;
  }
}

const acts: ReadonlyMap<string, string> = new Map([
  ['relabel', 'The relabelling'],
  ['waiver', 'The waiver'],
  ['treatment', 'The treatment'],
]);

export const qualityWords = {
  'grade-mismatch': (data, where) =>
    say(
      `${entryOf(data)} calls the water of ${storeOf(where)} ${textOf(data, 'said')}; by the book it is ${textOf(data, 'believed')}, and the book's grade stands.`,
      textOf(data, 'believed'),
      textOf(data, 'said'),
      `Look at the label and at how it was filled: ${look(storeOf(where))}.`,
    ),
  'grade-may-not-flow': (data) =>
    say(
      `${textOf(data, 'fromGrade')} water of ${textOf(data, 'from')} went into ${textOf(data, 'to')}, which held ${textOf(data, 'toGrade')} water (${textOf(data, 'ref')}); that way is not allowed here. Both are on HOLD.${keptBecause(data)}`,
      `water that may flow into ${textOf(data, 'toGrade')}`,
      textOf(data, 'fromGrade'),
      `Use neither until somebody has decided: ${look(textOf(data, 'to'))}. If the entry has a slip: waterwright log undo ${entryNo(data)}.`,
    ),
  'grade-went-up': (data, where) =>
    say(
      `${entryOf(data)} raises the grade of ${storeOf(where)} from ${textOf(data, 'fromGrade')} to ${textOf(data, 'toGrade')}; a label goes down only. The store is on HOLD.`,
      `${textOf(data, 'fromGrade')}, or a lower grade`,
      textOf(data, 'toGrade'),
      `Look at the label; if the entry has a slip: waterwright log undo ${entryNo(data)}. Treated water is raised by a treatment and a release.`,
    ),
  'biocides-meet': (data) => {
    const into =
      textOf(data, 'residue') === 'residue'
        ? `the rest of ${textOf(data, 'to')}, which had`
        : `${textOf(data, 'to')}, which has`;
    return say(
      `Water with ${textOf(data, 'comes')} went from ${textOf(data, 'from')} into ${into} ${textOf(data, 'meets')} in it (${textOf(data, 'ref')}); the two must not meet. Both are on HOLD.${keptBecause(data)}`,
      `no ${textOf(data, 'comes')} where ${textOf(data, 'meets')} is or was`,
      `${textOf(data, 'comes')} into ${textOf(data, 'meets')}`,
      `Use neither, and ask the medic: ${look(textOf(data, 'to'))}. If the entry has a slip: waterwright log undo ${entryNo(data)}.`,
    );
  },
  'reserve-unreleased': (data) => {
    const onWord =
      textOf(data, 'release') === 'none'
        ? 'nobody has released it'
        : `it was on the ${textOf(data, 'release')} alone`;
    return say(
      `Water of ${textOf(data, 'from')} went into the reserve ${textOf(data, 'to')} before a sample of the outpost had passed: ${onWord} (${textOf(data, 'ref')}).${keptBecause(data)}`,
      'water released on a sample of the outpost',
      textOf(data, 'release') === 'none' ? 'not released' : textOf(data, 'release'),
      `Take a sample of ${textOf(data, 'to')}: waterwright sample add ${word(textOf(data, 'to'))}. Until it has passed, leave ${textOf(data, 'to')} alone if there is other water.`,
    );
  },
  'reserve-drawn': (data, where, context) => {
    const times = maybeNumber(data, 'times');
    const how =
      times !== null
        ? `on Day ${numberOf(data, 'day')}, in ${counted(times, 'entry', 'entries')}, the last of them ${textOf(data, 'ref')}`
        : data['said'] === true
          ? `as entry ${textOf(data, 'ref')} says`
          : `since the counter at entry ${textOf(data, 'ref')} has more than the stores before it gave; nobody entered it`;
    return say(
      `${bareMassOf(data, 'massMg', context)} came out of the reserve, ${storeOf(where)}, ${how}.`,
      'a reserve that is left alone',
      bareMassOf(data, 'massMg', context),
      data['said'] === true
        ? 'Put a full container on the port, and fill the reserve up when there is released water.'
        : 'If a container was changed and not entered, enter it with its time: waterwright log hookup STORE PORT --at TIME.',
    );
  },
  'held-water-moved': (data, where) =>
    say(
      `Water of ${textOf(data, 'from')}, which is on HOLD ${textOf(data, 'hold')} (${saidHoldReason(textOf(data, 'reason'))}), went into ${textOf(data, 'to')} (${textOf(data, 'ref')}). The hold goes with the water.${keptBecause(data)}`,
      'held water that stays where it is',
      `moved into ${textOf(data, 'to')}`,
      `Use neither: ${look(storeOf(where))}. If the entry has a slip: waterwright log undo ${entryNo(data)}.`,
    ),
  'conditional-water-moved': (data, where) =>
    say(
      `Water of ${textOf(data, 'from')}, which is CONDITIONAL under ${textOf(data, 'hold')} (${saidHoldReason(textOf(data, 'reason'))}), went into ${textOf(data, 'to')} (${textOf(data, 'ref')}). ${textOf(data, 'to')} is CONDITIONAL now.${keptBecause(data)}`,
      'conditional water that stays where it is',
      `moved into ${textOf(data, 'to')}`,
      `Keep it for an emergency: ${look(storeOf(where))}. If the entry has a slip: waterwright log undo ${entryNo(data)}.`,
    ),
  'hold-open': (data, _where, context) => {
    const stores = listOf(data, 'stores');
    return say(
      `HOLD ${textOf(data, 'hold')} on ${counted(stores.length, 'store')}, ${massOf(data, 'massMg', context)}, since ${timeOf(data, 'sinceMs', context)} (${saidHoldReason(textOf(data, 'reason'))}): ${listed(stores)}. None of it is counted on.`,
      'no open hold',
      `${textOf(data, 'hold')} on ${listed(stores)}`,
      `Do not use it. What it touched, and the ways out: waterwright hold show ${word(textOf(data, 'hold'))}.`,
    );
  },
  'conditional-reserve': (data, _where, context) => {
    const stores = listOf(data, 'stores');
    return say(
      `${listed(stores)} ${stores.length === 1 ? 'is' : 'are'} CONDITIONAL since ${timeOf(data, 'sinceMs', context)}, ${massOf(data, 'massMg', context)}: the same water as under hold ${textOf(data, 'hold')} came into it. It is for an emergency only.`,
      'a reserve that is released',
      `${listed(stores)} conditional`,
      `Take a sample: waterwright sample add ${stores.map(word).join(' ')}. When it has passed: waterwright hold release ${word(textOf(data, 'hold'))} ${stores.map(word).join(' ')} --by medic.`,
    );
  },
  'release-unproven': (data) => {
    const stores = listed(listOf(data, 'stores'));
    return say(
      `${entryOf(data)} releases ${stores}, and no results prove it: ${saidLacksIn(data)}. It stays as it was.`,
      'results of this water that meet every limit which the outpost requires',
      saidLacksIn(data),
      `Take a sample, enter its result, and release ${stores} then: waterwright sample add ${listOf(data, 'stores').map(word).join(' ')}.`,
    );
  },
  'release-over': (data, where, context) =>
    say(
      `The release of ${storeOf(where)} by ${textOf(data, 'by')} was over at ${timeOf(data, 'untilMs', context)}. Its water is counted on no more.`,
      'a release that has not run out',
      `until ${timeOf(data, 'untilMs', context)}`,
      `Take a new sample: waterwright sample add ${word(storeOf(where))}. When it has passed: waterwright hold release ${word(storeOf(where))} --by medic.`,
    ),
  'treatment-not-allowed': (data, where) =>
    say(
      `${entryOf(data)} treats ${storeOf(where)} by ${textOf(data, 'recipe')}: ${treatmentWhy(data)}. The water waits.`,
      'a recipe of the outpost file that is allowed for this water',
      textOf(data, 'recipe'),
      `Ask the medic, and leave ${storeOf(where)} on hold: ${look(storeOf(where))}.`,
    ),
  'hold-unknown': (data) =>
    say(
      `${entryOf(data)} names the hold ${textOf(data, 'hold')}, and no store is on it.`,
      'a hold that is open',
      textOf(data, 'hold'),
      'The open holds: waterwright hold list.',
    ),
  'result-unanswered': (data) =>
    say(
      `The result of ${textOf(data, 'sample')} fails (${listed(listOf(data, 'parameters'))}), and nobody has said what is to be held. Other stores may have the same water.`,
      'a hold on all that its water touched',
      `no hold for ${textOf(data, 'sample')}`,
      `See what it touched and hold it: waterwright hold add --sample ${word(textOf(data, 'sample'))}.`,
    ),
  'limit-off': (data) =>
    say(
      `No limit set for ${listed(listOf(data, 'parameters'))}: hold. The outpost requires ${counted(listOf(data, 'rows').length, 'row')} whose figure nobody has typed, and no water of that use is counted on.`,
      'a figure for every row that the outpost requires',
      listed(listOf(data, 'rows')),
      'Type each figure from your own copy of the rule, or choose other limits: waterwright quality limits.',
    ),
  'parked-over': (data, _where, context) =>
    say(
      `The hold ${textOf(data, 'hold')} was parked with ${textOf(data, 'owner')} until ${timeOf(data, 'untilMs', context)}; that is over, and it is still held.`,
      'a decision by that date',
      'none yet',
      `Decide, or park it anew: waterwright hold show ${word(textOf(data, 'hold'))}.`,
    ),
  'alone-for-two': (data) => {
    const act = acts.get(textOf(data, 'act')) ?? `The act "${textOf(data, 'act')}"`;
    return say(
      `${act} in entry ${textOf(data, 'ref')} stands without a second person, and at this outpost it takes two.`,
      'a second person',
      'one person',
      'If two were there, undo it and enter it with --second OFFICE. If not, let a second person look at the store and at its label.',
    );
  },
} satisfies Partial<Words<AccountFindingCode>>;
