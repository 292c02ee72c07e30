// Table of requests about samples, results and holds that the desk says no to, on the practice book.
import {
  addResult,
  addSample,
  type Desk,
  type HoldAct,
  holdAct,
  holdShow,
  type Moment,
  type ResultRequest,
} from '../../../src/desk/index.ts';
import type { DeskFindingCode } from '../../../src/papers/index.ts';
import { practiceDesk } from '../../field-log/practice-desk.ts';
import { BAD, deskOfLines, KEEPER, linesBefore, MEDIC, must } from '../../quality/before-result.ts';
import { failed } from './asked-desk.ts';
import { type Sample, type Samples, sample } from './sample.ts';

/** Refused requests change nothing: one book serves all of them. */
let practice: Promise<Desk> | null = null;
let before: Promise<Desk> | null = null;
const endOfBook = (): Promise<Desk> => (practice ??= practiceDesk());
/** With a sample of R2 that waits, and a hold that is over. */
let changed: Promise<Desk> | null = null;
const goneOn = (): Promise<Desk> => (changed ??= goOn());

async function goOn(): Promise<Desk> {
  const desk = await practiceDesk();
  await must(addSample(desk, KEEPER, { of: ['R2'] }));
  await must(holdAct(desk, KEEPER, { act: 'add', stores: ['C-10'], reason: 'smells of plastic' }));
  await must(holdAct(desk, MEDIC, { act: 'release', of: ['Q-02'] }));
  return desk;
}

const beforeResult = (): Promise<Desk> => (before ??= deskOfLines(linesBefore('E0053')));

type Book = 'the practice book at the end of Day 60' | 'the practice book before the result of Day 14';
const books: Readonly<Record<Book, () => Promise<Desk>>> = {
  'the practice book at the end of Day 60': endOfBook,
  'the practice book before the result of Day 14': beforeResult,
};

const END = 'the practice book at the end of Day 60';
const BEFORE = 'the practice book before the result of Day 14';

function result(code: DeskFindingCode, book: Book, request: ResultRequest, more = {}) {
  return async () => {
    const desk = await books[book]();
    const answer = await addResult(desk, KEEPER, request, more);
    return failed(
      code,
      [book, `asked: ${JSON.stringify({ ...request, ...more })}`],
      answer,
      await must(desk.account()),
    );
  };
}

function act(code: DeskFindingCode, book: Book, request: HoldAct, moment: Moment = KEEPER) {
  return async () => {
    const desk = await books[book]();
    const answer = await holdAct(desk, moment, request);
    return failed(
      code,
      [book, `asked by the ${moment.by}: ${JSON.stringify(request)}`],
      answer,
      await must(desk.account()),
    );
  };
}

export const refusedActs: readonly Sample['fails'][number][] = [
  act('intention-refused', END, { act: 'release', of: ['Q-01', 'R2'] }, MEDIC),
  act('intention-refused', END, { act: 'release', of: ['Q-01', 'R2'] }),
  act('intention-refused', END, { act: 'treat', store: 'W-01' }),
  act('intention-refused', END, { act: 'downgrade', store: 'C-10', grade: 'drinking' }),
];

export const qualitySamples = {
  'parameter-unknown': sample(
    'A figure of something that this outpost neither measures nor limits.',
    result('parameter-unknown', END, { of: 'C-02', figures: { silvr: '0.2mg/L' } }),
  ),
  'figure-unread': sample(
    'A figure in a unit or on a basis that cannot be, or none at all.',
    result('figure-unread', END, { of: 'C-02', figures: { silver: '0.03' } }),
    result('figure-unread', END, { of: 'C-02', figures: { silver: '0.03 CFU/mL' } }),
    result('figure-unread', END, { of: 'C-02', figures: { silver: '30000 g/L' } }),
    result('figure-unread', END, { of: 'C-02', values: ['nitrate=3 mg/L'] }),
    result('figure-unread', END, { of: 'C-02', figures: { silver: 'low' } }),
  ),
  'sample-of-other': sample(
    'A result told for another store than its sample is of.',
    result('sample-of-other', END, { of: 'SMP-05', store: 'C-06', figures: { toc: '0.5mg/L' } }),
  ),
  'result-before-sample': sample(
    'A result from before its sample was drawn.',
    result('result-before-sample', END, { of: 'SMP-05', figures: { toc: '0.5mg/L' } }, { at: 'D16T12:00' }),
  ),
  'result-contradicts': sample(
    'A second word on a figure of one sample.',
    result('result-contradicts', END, { of: 'SMP-05', figures: { silver: '0.3mg/L' } }),
    result('result-contradicts', END, {
      of: 'C-02',
      figures: { silver: '0.2mg/L' },
      values: ['silver=0.3 mg/L'],
    }),
  ),
  'sample-waits': sample('A result of a place whose sample waits for one.', async () => {
    const desk = await goneOn();
    const answer = await addResult(desk, KEEPER, { of: 'R2', figures: { silver: '0.2mg/L' } });
    const given = [END, 'a sample SMP-13 of R2', 'asked: {"of":"R2","figures":{"silver":"0.2mg/L"}}'];
    return failed('sample-waits', given, answer, await must(desk.account()));
  }),
  'hold-undecided': sample(
    'A result fails, and nobody has said what is to be held.',
    result('hold-undecided', BEFORE, BAD, { at: 'D14T16:20' }),
  ),
  'hold-not-proposed': sample(
    'A store that the trace does not propose to hold.',
    result(
      'hold-not-proposed',
      BEFORE,
      { ...BAD, hold: ['C-02'], reason: 'the others are empty' },
      { at: 'D14T16:20' },
    ),
  ),
  'nothing-touched': sample(
    'A sample whose water is nowhere aboard any more.',
    act('nothing-touched', END, { act: 'add', sample: 'TOC-23' }),
  ),
  'hold-ended': sample('A hold that no store is on any more.', async () => {
    const desk = await goneOn();
    const park: HoldAct = { act: 'park', hold: 'Q-02', owner: 'medic', until: 'D70' };
    const answer = await holdAct(desk, KEEPER, park);
    return failed('hold-ended', [END, 'Q-02 on C-10, released', `asked: ${JSON.stringify(park)}`], answer);
  }),
  'not-on-hold': sample(
    'A store that is not on the hold that was named.',
    act('not-on-hold', END, { act: 'release', of: ['Q-01', 'C-02'] }, MEDIC),
  ),
  'medics-code': sample('Who drank of held water was asked for without the code of the medic.', async () => {
    const desk = await endOfBook();
    const answer = await holdShow(desk, { hold: 'Q-01', drank: true }, { kind: 'now' }, KEEPER);
    return failed('medics-code', [END, 'asked: hold show Q-01 --drank'], answer as never);
  }),
} satisfies Partial<Samples<DeskFindingCode>>;
