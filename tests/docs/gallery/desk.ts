// Table of requests that the desk says no to.

import { exportLines } from '../../../src/book/index.ts';
import {
  chooseLimits,
  condensateSheet,
  finishCount,
  importLines,
  type LimitsChoice,
  log,
  type NamedText,
  qualityTrend,
  reckon,
  startBook,
  today,
} from '../../../src/desk/index.ts';
import type { DeskFindingCode } from '../../../src/papers/index.ts';
import { LOG_LINES, OUTPOST_TEXT } from '../../field-log/corrie-log.ts';
import { practiceDesk } from '../../field-log/practice-desk.ts';
import { HOLM } from '../../journeys/holm.ts';
import { draftOf, emptyBook, holmBook } from '../../journeys/kept.ts';
import { at, dayLine, holmOpening, litres, readings } from '../../journeys/told.ts';
import { SMALL_LIMIT_SET } from '../../outpost/small-limit-set.ts';
import { askedSample, deskOver, failed, NOW } from './asked-desk.ts';
import { bedSamples } from './beds.ts';
import { qualitySamples, refusedActs } from './desk-quality.ts';
import { failure, type Samples, sample } from './sample.ts';
import { typedAfter } from './typed-lines.ts';

const when = (day: number, hour: number, count: number) => ({ atMs: at(day, hour), count });
const hold = draftOf(
  'hold',
  { hold: 'Q-1', stores: ['C-04'], conditional: [], reason: 'plate count' },
  when(1, 8, 11),
);
const conditional = draftOf(
  'hold',
  { hold: 'Q-1', stores: [], conditional: ['C-01'], reason: 'plate count' },
  when(1, 8, 19),
);
const emptied = draftOf('declared-empty', { store: 'C-04', counters: [] }, when(1, 8, 20));
const bag = (grade: string, release = 9) =>
  draftOf(
    'store-added',
    { store: 'V-1', kind: 'softBag', capacityL: 10, usableRemainderL: 0.2, grade, amount: litres(release) },
    when(1, 8, 12),
  );
const closed = draftOf('day-close', { day: 1, what: 'day', figures: [] }, when(1, 22, 13));
const line = draftOf(
  'day-line',
  dayLine(1, { condensate: 993, product: 3, strokes: 200, flushes: 12 }),
  when(1, 21, 14),
);
const strokes = draftOf('meter', { readings: readings({ strokes: 150 }) }, when(2, 9, 15));
const drink = draftOf(
  'movement',
  { from: 'C-04', to: 'people', amount: litres(1), use: 'drink' },
  when(1, 9, 16),
);
const undo = draftOf('undo', { target: drink.id }, when(1, 10, 17));
const visit = draftOf(
  'visit-berth',
  {
    visit: 'Skiff',
    peopleArrive: 0,
    stores: [
      {
        store: 'V-2',
        kind: 'vehicleTank',
        capacityL: 100,
        usableRemainderL: 3,
        grade: 'drinking',
        amount: litres(90),
      },
    ],
  },
  when(1, 8, 18),
);
const move = (amount: string, from: string, to: string) => ({ what: 'move', amount, from, to }) as const;

const rules = {
  'intention-refused': askedSample(
    'intention-refused',
    'A rule speaks against what somebody is about to do. What has happened already is kept with `--happened`.',
    { before: [hold], request: { what: 'use', amount: '1L', use: 'drink', from: 'C-04' } },
    { before: [hold], request: move('2L', 'C-04', 'C-03') },
    { before: [bag('iodine')], request: move('2L', 'V-1', 'C-04') },
    { request: move('2L', 'C-02', 'C-04') },
    { request: { what: 'use', amount: '1L', use: 'drink', from: 'C-02' } },
    { before: [emptied], request: move('2L', 'W-01', 'C-04') },
    { before: [conditional], request: { what: 'use', amount: '1L', use: 'drink', from: 'C-01' } },
    { request: move('2L', 'R1', 'C-04') },
    { before: [visit], request: move('20L', 'V-2', 'R1') },
    { request: move('20.5L', 'R1', 'C-04'), moment: { by: 'chief' } },
    { request: move('19L', 'C-04', 'C-03') },
  ),
  'second-needed': askedSample('second-needed', 'An act for two persons was asked for by one.', {
    request: { what: 'relabel', store: 'C-03', grade: 'technical' },
  }),
  'second-is-first': askedSample('second-is-first', 'The second person is the first one.', {
    request: { what: 'relabel', store: 'C-03', grade: 'technical' },
    moment: { second: { office: 'keeper', confirmation: 'declared, not verified' } },
  }),
  'day-closed': askedSample('day-closed', 'The day on which it happened is closed.', {
    before: [closed],
    request: { what: 'drink', amount: '8' },
    more: { at: 'D1T14:00' },
  }),
} satisfies Partial<Samples<DeskFindingCode>>;

const inputs = {
  'not-in-book': askedSample(
    'not-in-book',
    'A store, a port, an entry or a grade that this book does not have.',
    { request: { what: 'weigh', store: 'C-99', amount: '8L' } },
    { request: { what: 'hookup', store: 'C-03', port: 'galley' } },
    { request: { what: 'undo', entry: '9999' } },
  ),
  'before-book': askedSample('before-book', 'It happened before the book begins.', {
    request: { what: 'drink', amount: '8' },
    more: { at: '2146-12-01T12:00Z' },
  }),
  'in-the-future': askedSample('in-the-future', 'It happens later than now.', {
    request: { what: 'drink', amount: '8' },
    more: { at: '2147-02-01T12:00Z' },
  }),
  'nothing-to-undo': askedSample(
    'nothing-to-undo',
    'An undo without a number, and nothing young to take back.',
    {
      request: { what: 'undo' },
    },
  ),
  'already-undone': askedSample('already-undone', 'The entry was taken back before.', {
    before: [drink, undo],
    request: { what: 'undo', entry: '3' },
  }),
  'not-correctable': askedSample('not-correctable', 'A correction of an entry without an amount.', {
    before: [hold],
    request: { what: 'correct', entry: '3', value: '2L', reason: 'wrong store' },
  }),
  'field-needed': askedSample(
    'field-needed',
    'Something is missing without which the entry says too little, or does not fit.',
    { request: { what: 'told', kind: 'sample', fields: {} } },
    { request: move('2L', 'C-04', 'C-04') },
  ),
  'reading-over-capacity': askedSample('reading-over-capacity', 'A reading above what the store can hold.', {
    request: { what: 'weigh', store: 'C-04', amount: '214L' },
  }),
  'source-unsaid': askedSample('source-unsaid', 'A fill of which nobody said where the water comes from.', {
    request: { what: 'fill', store: 'C-03', amount: '2L' },
  }),
  'more-than-there': askedSample('more-than-there', 'More comes out than there is by the book.', {
    request: { what: 'drink', amount: '500L' },
  }),
  'drink-large': askedSample('drink-large', 'A drink that nobody takes at once.', {
    request: { what: 'drink', amount: '5L' },
  }),
  'reading-unusual': askedSample('reading-unusual', 'A reading far outside of what is expected.', {
    request: { what: 'day', readings: { strokes: '99999' } },
  }),
  'time-ahead': sample('A time that would move the present of a practice book.', async () => {
    const answer = await log(await practiceDesk(), NOW, { what: 'drink', amount: '8' }, { at: 'D70T09:00' });
    const given = [
      'the practice book, whose last entry is of Day 60',
      'asked: {"what":"drink","amount":"8"} at Day 70',
    ];
    return failed('time-ahead', given, answer);
  }),
  'cover-out': sample('No day of cover of a grade can be counted on.', async () => {
    const sheet = await today(await practiceDesk(), { kind: 'now' }, NOW);
    const finding = sheet.ok ? sheet.value.findings.find(({ code }) => code === 'cover-out') : undefined;
    if (finding === undefined) throw new Error('the practice book has water to count on');
    return { given: ['the practice book at the end of Day 60'], finding };
  }),
  'amount-nothing': askedSample('amount-nothing', 'Water that moved, and is none.', {
    request: move('0L', 'C-04', 'C-03'),
  }),
  'figure-not-whole': askedSample('figure-not-whole', 'A count that is broken.', {
    request: { what: 'drink', amount: '5.5' },
  }),
  'counter-below-last': askedSample('counter-below-last', 'A counter reads less than before.', {
    before: [strokes],
    request: { what: 'day', readings: { strokes: '90' } },
  }),
  'day-line-kept': askedSample('day-line-kept', 'A second line for one day.', {
    before: [line],
    request: { what: 'day', readings: { strokes: '90' } },
    more: { at: 'D1T23:00' },
  }),
  'opening-kept': askedSample('opening-kept', 'Opening stocks for a book that has them.', {
    request: { what: 'kind', kind: 'opening', body: holmOpening({ stores: [], ports: [], counters: [] }) },
  }),
  'name-taken': askedSample('name-taken', 'A new store with the name of one that is there.', {
    request: {
      what: 'told',
      kind: 'store-added',
      fields: {
        store: 'C-01',
        kind: 'container',
        capacity: '22L',
        'usable-remainder-l': '0.6',
        grade: 'drinking',
      },
    },
  }),
  'office-unknown': askedSample('office-unknown', 'An office that the outpost file does not name.', {
    request: { what: 'drink', amount: '8' },
    moment: { by: 'cook' },
  }),
} satisfies Partial<Samples<DeskFindingCode>>;

const corrie = { name: 'outpost.yaml', text: OUTPOST_TEXT };

/** An empty book, or one that has the outpost file of Corrie. */
async function corrieDesk(isBegun: boolean) {
  const desk = await deskOver(emptyBook('corrie'));
  if (isBegun) await startBook(desk, NOW, corrie);
  return desk;
}

const imports = {
  'book-not-begun': sample(
    'Something was asked of a book that has no outpost file, or no opening stocks.',
    async () => {
      const answer = await log(await corrieDesk(false), NOW, { what: 'drink', amount: '8' });
      return failed('book-not-begun', ['an empty book, asked: {"what":"drink","amount":"8"}'], answer);
    },
    async () => {
      const answer = await log(await corrieDesk(true), NOW, { what: 'drink', amount: '8' });
      return failed(
        'book-not-begun',
        ['a book with its outpost file only, asked: {"what":"drink","amount":"8"}'],
        answer,
      );
    },
  ),
  'format-unknown': sample('A file that is in none of the formats known here.', async () => {
    const request = { file: 'diary.txt', lines: ['Dear diary,', 'today we drank 12 litres.'] };
    return failed(
      'format-unknown',
      ['import diary.txt', ...request.lines],
      await importLines(await corrieDesk(true), NOW, request),
    );
  }),
  'line-not-taken': sample(
    'A preview was asked for of an export, which is taken whole or not at all.',
    async () => {
      const lines = await Array.fromAsync(exportLines(await holmBook()));
      const desk = await deskOver(await holmBook());
      const answer = await importLines(desk, NOW, { file: 'holm.jsonl', lines, dryRun: true });
      return failed('line-not-taken', ['import --dry-run holm.jsonl', ...lines.slice(0, 1)], answer);
    },
  ),
  'many-entries': sample('An import would add many entries at once.', async () => {
    const answer = await importLines(await corrieDesk(true), NOW, {
      file: 'field-log.jsonl',
      lines: LOG_LINES,
    });
    return failed('many-entries', [`import field-log.jsonl, which has ${LOG_LINES.length} lines`], answer);
  }),
  'book-not-empty': sample('A start needs an empty book.', async () => {
    const desk = await deskOver(await holmBook());
    const answer = await startBook(desk, NOW, { name: 'holm.yaml', text: HOLM });
    return failed('book-not-empty', ['begin with holm.yaml in a book of 2 entries'], answer);
  }),
} satisfies Partial<Samples<DeskFindingCode>>;

/** Holm counts on its second day what was begun on its first. */
async function finishLate() {
  const desk = await deskOver(await holmBook());
  const count = { id: desk.newId(at(1, 9)), begunMs: at(1, 9), by: 'keeper', places: null };
  const typed = new Map([['C-04', '19 L']]);
  const given = ['counted on Day 1 from 09:00: C-04 19 L', 'finished on Day 2 at 12:00'];
  const opened = await desk.account();
  const answer = await finishCount(desk, NOW, { ...count, typed });
  return failed('count-of-another-day', given, answer, opened.ok ? opened.value : undefined);
}

const counts = {
  'count-not-begun': sample('A stock count is finished that nobody has begun.', () =>
    typedAfter('count-not-begun', 'count finish'),
  ),
  'count-empty': sample('A stock count is finished before anything was read.', () =>
    typedAfter('count-empty', 'count start --yes', 'count finish'),
  ),
  'count-far-off': sample('A reading of a stock count is far from what the book has.', () =>
    typedAfter('count-far-off', 'count start --yes', 'count add c02 3L'),
  ),
  'count-over-capacity': sample('A reading of a stock count is more than the store can hold.', () =>
    typedAfter('count-over-capacity', 'count start --yes', 'count add c02 30L'),
  ),
  'count-needs-doubt': sample('A reading without its ± of a store that nothing gauges.', () =>
    typedAfter('count-needs-doubt', 'count start --yes', 'count add K-2 3L'),
  ),
  'count-of-another-day': sample('A stock count is finished days after it was begun.', finishLate),
  'count-under-way': sample('A stock count is begun while another one is under way.', () =>
    typedAfter('count-under-way', 'count start --yes', 'count add c02 20.4L', 'count start'),
  ),
} satisfies Partial<Samples<DeskFindingCode>>;

/** A calculator asked where there is no book. */
function reckoned(what: string, fields: Readonly<Record<string, string>>) {
  const words = Object.entries(fields).map(([name, text]) => ` --${name} ${text}`);
  const answer = reckon({ what, fields }, null);
  if (answer.ok) throw new Error('it was answered');
  return failure([`waterwright reckon ${what}${words.join('')}`], answer.findings[0]);
}

const reckonings = {
  'reckon-unknown': sample('A calculator that is not there.', () => reckoned('transfr', {})),
  'reckon-input-missing': sample('A calculator without what it needs.', () =>
    typedAfter('reckon-input-missing', 'reckon transfer --volume 20L'),
  ),
  'reckon-field-unknown': sample('An input that a calculator does not have.', () =>
    reckoned('mix', { volume: '20L,10L', bore: '8mm' }),
  ),
  'reckon-not-positive': sample('A length that is none.', () =>
    typedAfter('reckon-not-positive', 'reckon transfer --volume 20L --length 6m --bore 0mm --over 50kPa'),
  ),
  'reckon-too-large': sample('A share above 1.', () =>
    typedAfter(
      'reckon-too-large',
      'reckon condense --air 22C --humidity 50% --air-flow 120m3/h --coolant 6C --bypass 10',
    ),
  ),
  'reckon-choice': sample('A word that is none of those that an input takes.', () =>
    typedAfter('reckon-choice', 'reckon pressure --volume 200L --over 50kPa --receiver bucket'),
  ),
  'reckon-needs-book': sample('A store of the book, where there is no book.', () =>
    reckoned('pressure', { store: 'R2', over: '50kPa' }),
  ),
  'reckon-outside-range': sample('A value outside the range in which a formula holds.', () =>
    typedAfter('reckon-outside-range', 'reckon dewpoint --air 85C --humidity 50%'),
  ),
  'reckon-refused': sample('A pressure above the lowest rating of the line.', () =>
    typedAfter('reckon-refused', 'reckon pressure --store R2 --over 150kPa'),
  ),
} satisfies Partial<Samples<DeskFindingCode>>;

/** Asked for the condensate of a Holm whose outpost file lacks something. */
async function askCondensate(lacking: string, text: string) {
  const desk = await deskOver(emptyBook('holm'));
  const begun = await startBook(desk, NOW, { name: 'holm.yaml', text });
  if (!begun.ok) throw new Error(JSON.stringify(begun.findings));
  const query = { days: null };
  const answer = await condensateSheet(desk, { sight: { kind: 'now' }, moment: NOW, query });
  return failed(
    'no-condensate-expectation',
    [`an outpost file without ${lacking}, asked for its condensate`],
    answer,
  );
}

/** Asked for a trend of a store and a sampling point at once. */
async function askTrend() {
  const desk = await deskOver(emptyBook('holm'));
  const begun = await startBook(desk, NOW, { name: 'holm.yaml', text: HOLM });
  if (!begun.ok) throw new Error(JSON.stringify(begun.findings));
  const query = { parameter: 'silver', store: 'T1', point: 'tap' };
  const answer = await qualityTrend(desk, query, { kind: 'now' }, NOW);
  return failed('trend-places-clash', ['GET /api/quality/trend?parameter=silver&store=T1&point=tap'], answer);
}

const trends = {
  'trend-places-clash': sample('A trend was asked for at two places at once.', askTrend),
} satisfies Partial<Samples<DeskFindingCode>>;

const condensate = {
  'no-condensate-expectation': sample(
    'An expectation of condensate was asked for where the outpost file does not tell what it is made of.',
    () => askCondensate('a norm of vapour', HOLM.replace(/ {2}vapourCollectedLPerPersonDay: .*\n/, '')),
    () =>
      askCondensate(
        'a counter of its condenser',
        HOLM.replace(/ {2}- \{ id: condensate,[^\n]*\n[^\n]*\n/, ''),
      ),
  ),
} satisfies Partial<Samples<DeskFindingCode>>;

const exposures: NamedText = { file: 'skerry-rules.yaml', text: SMALL_LIMIT_SET };

/** Chosen for a hundred days, then another beside it for ten; and a choice that nobody has said yes to. */
async function chosen(code: DeskFindingCode, choices: readonly LimitsChoice[]) {
  const desk = await deskOver(await holmBook());
  const asked = choices.map((choice) => `choose limits ${saidChoice(choice)}`);
  const [last = { sets: [] }, ...before] = [...choices].reverse();
  for (const choice of before.reverse())
    await chooseLimits(desk, NOW, { reason: 'asked', ...choice }, { sure: true });
  const answer = await chooseLimits(desk, NOW, { reason: 'asked', ...last });
  return failed(code, asked, answer);
}

function saidChoice({ files, rows, exposureDays, sets }: LimitsChoice): string {
  const from = files === undefined ? sets.join(', ') : files.map(({ file }) => file).join(', ');
  const days = exposureDays === undefined ? '' : ` for ${exposureDays} d`;
  return `${from}${rows === undefined ? '' : `, rows ${rows.join(', ')}`}${days}`;
}

const limits = {
  'limits-ask': sample('Limits that nobody has said yes to.', () =>
    chosen('limits-ask', [{ sets: [], files: [exposures], rows: ['silver range'] }]),
  ),
  'limit-exposure-differs': sample('Sets that were chosen for another time of drinking.', () =>
    chosen('limit-exposure-differs', [
      { sets: [], files: [exposures], rows: ['nickel 10 d'], exposureDays: 10 },
      { sets: ['outpost policy'], exposureDays: 100 },
    ]),
  ),
} satisfies Partial<Samples<DeskFindingCode>>;

export const deskSamples: Samples<DeskFindingCode> = {
  ...limits,
  ...rules,
  ...inputs,
  ...imports,
  ...counts,
  ...reckonings,
  ...condensate,
  ...trends,
  ...qualitySamples,
  'intention-refused': {
    ...rules['intention-refused'],
    fails: [...rules['intention-refused'].fails, ...refusedActs],
  },
  ...bedSamples,
};
