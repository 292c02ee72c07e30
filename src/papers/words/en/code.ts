// English for what is said about the codes by which a person confirms.
import type { CodeFindingCode } from '../code-codes.ts';
import type { Words } from '../shape.ts';
import { listOf, maybeText, numberOf, textOf } from './data.ts';
import { counted, listed } from './said.ts';
import { say, word } from './say.ts';

const nothing = 'Nothing was written.';

const unfit: Readonly<Record<string, readonly [text: string, received: string]>> = {
  signs: ['A code has digits only, 0 to 9.', 'other signs too'],
  length: ['A code has 4 to 12 digits.', 'another number of them'],
  repeat: ['One or two digits over and over are the first that anybody tries.', 'a repetition'],
  run: ['Digits in the order of the keys are the first that anybody tries.', 'a run up or down'],
};

/** A wait as a person keeps it: whole minutes, and seconds in the last one. */
function saidWait(ms: number): string {
  return ms > 60_000 ? counted(Math.ceil(ms / 60_000), 'minute') : counted(Math.ceil(ms / 1000), 'second');
}

const setAnew = (office: string) =>
  `If it is lost: waterwright book code set ${word(office)} --lost --second OFFICE.`;

export const codeWords: Words<CodeFindingCode> = {
  'code-wrong': (data) => {
    const [office, left] = [textOf(data, 'office'), numberOf(data, 'left')];
    const wait = counted(numberOf(data, 'waitMin'), 'minute');
    const then =
      left === 0
        ? `That was one too many: the ${office} now waits ${wait}.`
        : `${counted(left, 'try', 'tries')} left before the ${office} waits ${wait}.`;
    return say(
      `Refused: that is not the code of the ${office}. ${nothing} ${then}`,
      `the code of the ${office}`,
      'another one',
      `Let the ${office} type it again. ${setAnew(office)}`,
    );
  },
  'code-waits': (data) => {
    const [office, wait] = [textOf(data, 'office'), saidWait(numberOf(data, 'leftMs'))];
    return say(
      `Refused: after ${counted(numberOf(data, 'tries'), 'wrong code')} in a row no code of the ${office} is looked at for another ${wait}. ${nothing}`,
      'a wait after wrong codes',
      `${wait} left`,
      `Wait, name another second person, or leave the code out: the entry then says "declared, not verified". ${setAnew(office)}`,
    );
  },
  'code-none': (data) => {
    const office = textOf(data, 'office');
    return say(
      `Refused: the ${office} has no code, so nothing can be opened or confirmed by it. ${nothing}`,
      `a code of the ${office}`,
      'none set',
      `Let the ${office} set one: waterwright book code set ${word(office)}.`,
    );
  },
  'code-unfit': (data) => {
    const [text, received] = unfit[textOf(data, 'why')] ?? ['That is no code.', 'another text'];
    return say(
      `${text} ${nothing}`,
      '4 to 12 digits that are no run and no repetition',
      received,
      'Choose another one.',
    );
  },
  'code-used-before': (data) =>
    say(
      `The ${textOf(data, 'office')} had this code before. ${nothing}`,
      'a code that the office has not had',
      'an older one',
      'Choose another one.',
    ),
  'code-old-missing': (data) => {
    const office = textOf(data, 'office');
    return say(
      `Refused: the ${office} has a code, and only who knows it changes it. ${nothing}`,
      'the old code, then the new one',
      'only a new one',
      `Give the old one too. ${setAnew(office)}`,
    );
  },
  'code-not-own': (data) => {
    const [office, by] = [textOf(data, 'office'), textOf(data, 'by')];
    return say(
      `Refused: the ${by} does not set the code of the ${office}; each sets its own. ${nothing}`,
      office,
      by,
      `Leave --by out: the ${office} types the code. ${setAnew(office)}`,
    );
  },
  'code-lost-by': (data) => {
    const [office, by, second] = [textOf(data, 'office'), textOf(data, 'by'), maybeText(data, 'second')];
    const allowed = listed(listOf(data, 'allowed'), 'or');
    return say(
      `Refused: a lost code of the ${office} is set anew by the ${allowed}, and another office confirms it by its own code. ${nothing}`,
      `the ${allowed}, and a second person who is neither of the two`,
      second === null ? `the ${by}, and no second person` : `the ${by}, and the ${second}`,
      `Let them do it: waterwright book code set ${word(office)} --lost --by ${allowed.includes(' ') ? 'OFFICE' : allowed} --second OFFICE.`,
    );
  },
  'code-not-given': (data) => {
    const office = textOf(data, 'office');
    return say(
      `No code of the ${office} came to be read. ${nothing}`,
      data['what'] === 'set' ? `the new code of the ${office}` : `the code of the ${office}`,
      'the end of the input, or nobody who could be asked',
      'Type it at a terminal, or give it on a line of standard input with --codes-from-stdin.',
    );
  },
  'code-twice-unlike': (data) =>
    say(
      `The new code of the ${textOf(data, 'office')} was typed twice, and not alike. ${nothing}`,
      'the same code twice',
      'two codes',
      'Do it again from the beginning.',
    ),
  'code-by-hand': () =>
    say(
      `That a code was set stands in the book only when one was. ${nothing}`,
      'a code that is typed',
      'an entry without one',
      'Set it: waterwright book code set OFFICE.',
    ),
  'code-not-undone': (data) => {
    const office = textOf(data, 'office');
    return say(
      `Entry ${textOf(data, 'ref')} tells that a code of the ${office} was set; an undo would not bring the old one back. ${nothing}`,
      'another entry',
      'one about a code',
      `Set another code: waterwright book code set ${word(office)}.`,
    );
  },
  'code-too-often': (data) =>
    say(
      `More than ${counted(numberOf(data, 'most'), 'code')} in a minute came to this server, so none is looked at for ${saidWait(numberOf(data, 'leftMs'))}. ${nothing}`,
      `at most ${counted(numberOf(data, 'most'), 'code')} a minute`,
      'more',
      'Wait that long, and look for what sends them.',
    ),
};
