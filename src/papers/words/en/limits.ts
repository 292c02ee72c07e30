// English for what can be wrong with a set of limits, with a choice among its rows and with a typed limit.
import type { FindingData } from '../../../ground/units/index.ts';
import type { LimitFindingCode } from '../../../outpost/index.ts';
import type { Words } from '../shape.ts';
import { say } from './say.ts';

const quoted = (value: FindingData[string] | undefined): string => `"${value ?? ''}"`;
const names = (value: FindingData[string] | undefined): string =>
  Array.isArray(value) ? value.join(', ') : '';
const both = (value: FindingData[string] | undefined): string => names(value).replace(', ', ' and ');

/** Longer than this nobody means a number of days. */
const LONG_DAYS = 1e6;
const isSaid = (days: FindingData[string] | undefined): boolean =>
  typeof days === 'number' && days < LONG_DAYS;
const saidDays = (days: FindingData[string] | undefined): string => `${days} ${days === 1 ? 'day' : 'days'}`;

export const limitWords: Words<LimitFindingCode> = {
  'row-from-memory-in-force': (data) =>
    say(
      `The row ${data['row']} is from memory, yet it would be judged by.`,
      'status: off, and the figure under remembered',
      data['status'] === 'on' ? 'status: on' : 'atLeast or atMost',
      'Switch it off and write its figure under remembered. To put it in force, type the value from your own copy.',
    ),
  'row-remembered-not-memory': (data) =>
    say(
      `The row ${data['row']} has a remembered figure, but it is not from memory.`,
      'remembered only with evidence: memory',
      `evidence: ${data['evidence']}`,
      'Write the figure as atLeast or atMost, or say evidence: memory and status: off.',
    ),
  'row-without-figure': (data) =>
    say(
      `The row ${data['row']} has no figure.`,
      'atLeast, atMost or both',
      'neither',
      'Add the figure, or delete the row.',
    ),
  'row-unit-and-basis': (data) =>
    say(
      `The row ${data['row']} is told in ${data['unit']} and ${data['basis']}, which do not go together.`,
      'a basis that fits the unit',
      quoted(data['basis']),
      'Correct the unit or the basis; what goes together stands in docs/limit-sets.md.',
    ),
  'limit-row-unknown': (data) =>
    say(
      `The set has no row ${data['row']}.`,
      'ids of rows of the set',
      quoted(data['row']),
      names(data['near']) === ''
        ? 'Choose among the rows of the set.'
        : `Did you mean ${names(data['near'])}?`,
    ),
  'limit-use-unknown': (data) =>
    say(
      `The set says nothing of water for ${data['use']}.`,
      names(data['known']),
      quoted(data['use']),
      'Choose a set for this use, or add the use to the set.',
    ),
  'limit-exposure-uncovered': (data) => {
    const drunk = isSaid(data['exposureDays']) ? `${data['exposureDays']} days` : null;
    return say(
      `The row ${data['row']} holds for ${saidDays(data['coveredDays'])}; ${drunk === null ? 'nobody said for how long this water will be drunk' : `this water will be drunk for ${drunk}`}.`,
      drunk === null ? 'a time of drinking that the row is made for' : `a row for ${drunk} or longer`,
      saidDays(data['coveredDays']),
      drunk === null
        ? 'Say how long with --exposure, or leave this row out of the choice.'
        : 'Choose a set with a value for so long a time, or leave this row out of the choice.',
    );
  },
  'typed-limit-not-off': (data) =>
    say(
      `The row ${data['row']} is in force already.`,
      'a row that is off',
      'a row that is on',
      'To change a limit in force, write it in a set of the outpost.',
    ),
  'typed-limit-side': (data) =>
    say(
      `The row ${data['row']} is not whole yet: ${both(data['missing'])} is missing.`,
      both(data['missing']),
      'nothing',
      'Type every side of the limit as it stands in your copy.',
    ),
  'typed-limit-unit': (data) =>
    say(
      `The row ${data['row']} cannot be told in ${data['unit']} ${data['basis']}.`,
      `${data['wantedUnit']} ${data['wantedBasis']}, or what can be turned into it`,
      quoted(`${data['unit']} ${data['basis']}`),
      'Type the value with the unit and basis of your copy; look whether it is the same parameter.',
    ),
  'typed-limit-range': (data) =>
    say(
      `What was typed for the row ${data['row']} cannot be a limit.`,
      `figures from 0 to ${data['most']} ${data['unit']}, atLeast not above atMost`,
      names(data['typed']) || 'none',
      'Look at the decimal point and the unit in your copy, and type it again.',
    ),
  'typed-limit-copy': (data) =>
    say(
      `The row ${data['row']} is not put in force without saying who typed it and from which copy.`,
      'who, which copy, and when',
      `${quoted(data['by'])} from ${quoted(data['copy'])}`,
      'Say who you are and which copy is before you: title, edition, page.',
    ),
};
