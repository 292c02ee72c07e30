// English for why something may not follow in the run of a card.
import type { FindingData } from '../../../ground/units/index.ts';
import type { RunFindingCode } from '../../../runs/index.ts';
import type { Words } from '../shape.ts';
import { say } from './say.ts';

const run = (data: FindingData): string => `${data['run'] ?? 'The run'}`;
const line = (data: FindingData): string => `${data['line'] ?? ''}`;
const names = (value: FindingData[string] | undefined): string =>
  Array.isArray(value) ? value.join(', ') : '';

const INPUTS: Readonly<Record<string, string>> = {
  tick: 'a tick',
  number: 'a number',
  choice: 'one of the choices of the line',
  time: 'a time',
  text: 'a text',
};

export const runWords: Words<RunFindingCode> = {
  'run-not-begun': (data) =>
    say(`${run(data)} has not begun.`, 'a run that has begun', 'no beginning', 'Begin the card first.'),
  'run-begun-twice': (data) =>
    say(
      `${run(data)} has begun already.`,
      'one beginning for a run',
      'a second one',
      'Go on with the run, or begin a new one under a number of its own.',
    ),
  'run-other-card': (data) =>
    say(
      `${run(data)} was not begun with this card.`,
      'the card, revision and form that the run names',
      `${data['card']}, revision ${data['revision']}, ${data['form']}`,
      'Take the card in the revision with which the run began.',
    ),
  'run-ended': (data) =>
    say(
      `${run(data)} is ${data['status']}; nothing follows.`,
      'a run that goes on',
      `a run that is ${data['status']}`,
      'Enter what else happened as an entry of its own, or begin a new run.',
    ),
  'run-stopped': (data) =>
    say(
      `${run(data)} was stopped.`,
      'the end of the run',
      'another line',
      'Make the place safe, end the run as aborted and say how much has moved.',
    ),
  'run-paused': (data) =>
    say(
      `${run(data)} is ${data['status']}.`,
      'a run that is going on',
      `a run that is ${data['status']}`,
      'Resume it first.',
    ),
  'run-not-paused': (data) =>
    say(
      `${run(data)} is going on; it cannot be resumed once more.`,
      'a run that is paused or interrupted',
      `a run that is ${data['status']}`,
      'Look at the marked line: somebody resumed it already.',
    ),
  'run-line-unknown': (data) =>
    say(
      `The card has no line ${line(data)}.`,
      'a line of the card',
      line(data),
      'Look at the numbers of the lines on the card.',
    ),
  'run-line-closed': (data) =>
    say(
      `The line ${line(data)} is closed.`,
      'an open line',
      'a line that was done, recorded or skipped',
      'Go on with the marked line; a slip is mended by a correction.',
    ),
  'run-line-order': (data) =>
    say(
      `The line ${line(data)} is not next.`,
      `the marked line, ${data['marked'] ?? 'none'}`,
      line(data),
      'Do the marked line first.',
    ),
  'run-line-off': (data) =>
    say(
      `What was found at the line ${line(data)} is off, and nobody has decided yet.`,
      'recheck, record as deviation, or stop',
      'something else',
      'Decide on the value first.',
    ),
  'run-line-not-off': (data) =>
    say(
      `There is nothing to ${data['choice']} at the line ${line(data)}.`,
      'a value that is off',
      'none',
      'Enter what was found; a value that fits needs no decision.',
    ),
  'run-found-kind': (data) =>
    say(
      `The line ${line(data)} is answered in another way.`,
      INPUTS[`${data['kind']}`] ?? `${data['kind']}`,
      'something else',
      'Enter it in the way that the card shows.',
    ),
  'run-same-person': (data) =>
    say(
      `${data['by']} did lines before the hold point ${line(data)} and cannot be the one who checks them.`,
      'somebody else, with a code of their own',
      `${data['by']}`,
      'Ask the second person to look and to confirm.',
    ),
  'run-second-missing': (data) =>
    say(
      `The line ${line(data)} is for two people.`,
      `a second person beside ${data['by']}`,
      'one person',
      'Name the other person; each gives a code of their own.',
    ),
  'run-must-pass': (data) =>
    say(
      `The ${data['check']} at the line ${line(data)} has to be passed.`,
      'recheck or stop',
      `${data['choice']}`,
      'Look again; if it does not pass, stop the card.',
    ),
  'run-must-pass-unknown': (data) =>
    say(
      `Whether the ${data['check']} at the line ${line(data)} is passed cannot be told.`,
      names(data['missing']) || 'a bound that can be worked out',
      'not known',
      'Find what is missing, or stop the card.',
    ),
  'run-skip-not-here': (data) =>
    say(
      `The line ${line(data)} cannot be skipped.`,
      'a line that nothing else hangs on',
      'a hold point, a line for two, a line of the flow, or one that a check rests on',
      'Do the line, or stop the card.',
    ),
  'run-reason-missing': (data) =>
    say(
      data['choice'] === 'abort'
        ? `${run(data)} is not aborted without a reason.`
        : `The line ${line(data)} is not passed over without a reason.`,
      'a reason in a few words',
      'none',
      'Say why: whoever reads the run later has only that.',
    ),
  'run-moved-missing': (data) =>
    say(
      `Water was flowing in ${run(data)}, and nobody said how much.`,
      'litres with their ±, and what stands in the hose',
      'nothing',
      'Read the meter, or take the litres so far as the card shows them.',
    ),
  'run-lines-open': (data) =>
    say(
      `${run(data)} has open lines.`,
      'every line done, recorded or skipped',
      names(data['lines']),
      'Do these lines, or abort the run.',
    ),
};
