// Table of events that may not follow where a run of the small card stands.
import { readCard } from '../../../src/outpost/index.ts';
import type { RunEvent, RunFindingCode } from '../../../src/runs/index.ts';
import { allDone, begin, done, end, fact, Run } from '../../cards/small-run.ts';
import { changedCard } from '../../outpost/small-card.ts';
import { failure, type Samples, sample } from './sample.ts';

const SIGNS: Readonly<Record<RunEvent['kind'], (event: never) => string>> = {
  'card-begin': (event: { card: string; revision: number; form: string }) =>
    `begin ${event.card}, revision ${event.revision}, ${event.form}`,
  'card-step': (event: {
    step: string;
    by: string;
    found: { is: string; value?: number; choice?: string };
  }) => `${event.by}: ${event.step} ${event.found.value ?? event.found.choice ?? event.found.is}`,
  'card-deviation': (event: { step: string; choice: string; reason: string }) =>
    `${event.choice} ${event.step}, "${event.reason}"`,
  'card-pause': (event: { why: string }) => `${event.why}`,
  'card-resume': () => 'resume',
  'card-end': (event: { end: string; reason: string }) =>
    event.reason === '' ? event.end : `${event.end}, "${event.reason}"`,
};

const said = (event: RunEvent): string => (SIGNS[event.kind] as (event: RunEvent) => string)(event);

/** The last event is refused where the others lead to. */
const after =
  (before: readonly RunEvent[], event: RunEvent, prepare: (run: Run) => void = () => {}) =>
  () => {
    const run = new Run();
    prepare(run);
    for (const each of before) run.take(each);
    const answer = run.ask(event);
    return failure([...before.map(said), `then ${said(event)}`], answer.ok ? undefined : answer.finding);
  };

const decide = (step: string, choice: 'recheck' | 'record' | 'skip' | 'stop', reason = 'it sticks') =>
  fact<RunEvent>({ kind: 'card-deviation', step, choice, reason });
const pause = fact<RunEvent>({ kind: 'card-pause', why: 'pause', reason: '' });
const resume = fact<RunEvent>({ kind: 'card-resume' });
const off = [begin(), done('labels'), done('mate'), done('before', { is: 'number', value: 120 })];
const toHold = [begin(), ...['labels', 'mate', 'before', 'tight', 'note'].map((step) => done(step))];
const flowing = [...toHold, done('seen', { is: 'tick' }, { by: 'second' }), done('open')];
const forTwo = [...flowing, done('shut'), done('litres')];

export const runSamples: Samples<RunFindingCode> = {
  'run-not-begun': sample('A line comes before the beginning.', after([], done('labels'))),
  'run-begun-twice': sample('A run is begun once more.', after([begin()], begin())),
  'run-other-card': sample('The card has another revision by now.', after([], begin({ revision: 2 }))),
  'run-ended': sample(
    'Something follows after the end.',
    after([], done('labels'), (run) => {
      run.take(begin());
      allDone(run);
      run.take(end());
    }),
  ),
  'run-stopped': sample(
    'A line follows after a stop.',
    after([...off, decide('before', 'stop')], done('mate')),
  ),
  'run-paused': sample('A line follows during a pause.', after([begin(), pause], done('labels'))),
  'run-not-paused': sample('Two people resume one run.', after([begin(), pause, resume], resume)),
  'run-line-unknown': sample('A line that the card does not have.', after([begin()], done('purge'))),
  'run-line-closed': sample('A line is done twice.', after([begin(), done('labels')], done('labels'))),
  'run-line-order': sample('A line is done before its turn.', after([begin()], done('tight'))),
  'run-line-off': sample('Nobody has decided on a value that is off.', after(off, done('before'))),
  'run-line-not-off': sample(
    'A value that fits is rechecked.',
    after([begin()], decide('labels', 'recheck')),
  ),
  'run-found-kind': sample(
    'A choice is answered with a tick.',
    after([begin()], done('labels', { is: 'tick' })),
  ),
  'run-same-person': sample('Who did the lines checks them too.', after(toHold, done('seen'))),
  'run-second-missing': sample(
    'A line for two is done by one.',
    after(forTwo, done('both', { is: 'time', atMs: 0 })),
  ),
  'run-must-pass': sample(
    'A check that failed is to be recorded as a deviation.',
    after([begin(), done('labels', { is: 'choice', choice: 'wrong' })], decide('labels', 'record')),
  ),
  'run-must-pass-unknown': sample('The bound of a check rests on a figure that nobody knows.', () => {
    const read = readCard(changedCard('found.before - 1 kPa', 'cabin.pressure - 1 kPa'), {
      file: 'pour.yaml',
    });
    if (!read.ok) throw new Error('the changed card has faults');
    const run = new Run(read.card);
    const before = [
      begin({ leaves: { 'cabin.pressure': null } }),
      ...['labels', 'mate', 'before'].map((step) => done(step)),
    ];
    for (const each of before) run.take(each);
    const answer = run.ask(done('tight'));
    const given = [
      'tight: expect { atLeast: cabin.pressure - 1 kPa }, and the pressure of the cabin is not known',
    ];
    return failure([...given, `then ${said(done('tight'))}`], answer.ok ? undefined : answer.finding);
  }),
  'run-skip-not-here': sample('A hold point is to be skipped.', after(toHold, decide('seen', 'skip'))),
  'run-reason-missing': sample(
    'A line is skipped, or a run aborted, without a word.',
    after([begin(), done('labels')], decide('mate', 'skip', '')),
    after([begin()], end('abort', '')),
  ),
  'run-moved-missing': sample(
    'Water flows, and the run is paused without its litres.',
    after(flowing, pause),
  ),
  'run-lines-open': sample('A run is finished with lines open.', after(flowing, end())),
};
