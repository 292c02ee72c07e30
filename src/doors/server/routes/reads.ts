// Table of the addresses that only look: Today, stores, daybook, findings, forms, names.
import * as z from 'zod';
import {
  type Answer,
  allFindings,
  bookNames,
  COMMAND_OF_KIND,
  type Desk,
  dayForm,
  findForm,
  formKinds,
  lastEnteredMs,
  type Moment,
  quirks,
  readPastTime,
  type Sight,
  showBook,
  since,
  storeList,
  storeShow,
  today,
} from '../../../desk/index.ts';
import { parseNumber, UNITS } from '../../../ground/units/index.ts';
import { aloud } from '../../../papers/index.ts';
import type { ServedBook } from '../served-book.ts';
import { finding } from '../shapes/figures.ts';
import { dayFormShape, kindFormShape, namesShape, unitsShape } from '../shapes/forms.ts';
import { bookSheet, quirksSheet, sinceSheet, storeSheet, storesSheet, todaySheet } from '../shapes/sheets.ts';
import { type Route, route } from './route.ts';
import { SIGHT_QUERY, sightOf } from './sight-query.ts';

const office = z.string().min(1).max(60).describe('an office of the outpost file');

/** Digits of a shape that was checked already. */
function wholeOf(digits: string): number {
  const read = parseNumber(digits);
  if (!read.ok) throw new Error(`${digits} passed the shape and is no number`);
  return read.value;
}

const dayOfQuery = z
  .string()
  .regex(/^[Dd]?\d{1,5}$/)
  .transform((text) => wholeOf(text.replace(/^[Dd]/, '')))
  .describe('an outpost day: D46');
const countOfQuery = z
  .string()
  .regex(/^[1-9]\d{0,4}$/)
  .transform(wholeOf)
  .describe('1 to 99999');

type Seen<Query> = {
  readonly desk: Desk;
  readonly sight: Sight;
  readonly moment: Moment;
  readonly query: Query;
};

/** Looks at the book in the sight that was asked for. */
function looking<Query extends object, T>(
  work: (seen: Seen<Query>) => Promise<Answer<T>>,
): (served: ServedBook, asked: { readonly query: Query }) => Promise<Answer<T>> {
  return (served, { query }) =>
    served.look(async (desk) => {
      const moment = served.moment();
      const sight = await sightOf(desk, moment, query);
      return sight.ok ? work({ desk, sight: sight.value, moment, query }) : sight;
    });
}

function changed<T, U>(answer: Answer<T>, change: (value: T) => U): Answer<U> {
  return answer.ok ? { ok: true, value: change(answer.value) } : answer;
}

const D13 = { query: { at: 'D13' } };

const SHEETS: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/today',
    does: 'How much water there is, where, fit for what, until when, and what needs somebody.',
    schema: 'today',
    query: SIGHT_QUERY,
    answer: todaySheet,
    example: D13,
    run: looking(({ desk, sight, moment }) => today(desk, sight, moment)),
  }),
  route({
    method: 'get',
    path: '/api/today/say',
    does: 'Today in at most 400 signs, to be read aloud.',
    schema: 'say',
    query: SIGHT_QUERY,
    answer: z.strictObject({ text: z.string() }),
    run: looking(async ({ desk, sight, moment }) =>
      changed(await today(desk, sight, moment), (sheet) => ({ text: aloud(sheet) })),
    ),
  }),
  route({
    method: 'get',
    path: '/api/stores',
    does: 'All stores: what is in them and how surely.',
    schema: 'stores',
    query: SIGHT_QUERY,
    answer: storesSheet,
    run: looking(({ desk, sight, moment }) => storeList(desk, sight, moment)),
  }),
  route({
    method: 'get',
    path: '/api/stores/{id}',
    does: 'One store, and the answer to: may I use this water?',
    schema: 'store',
    params: { id: z.string().min(1).max(80).describe('its name; c07 is C-07') },
    query: { ...SIGHT_QUERY, history: countOfQuery.exactOptional() },
    answer: storeSheet,
    example: { params: { id: 'R2' } },
    run: (served, { params, query }) =>
      looking<typeof query, unknown>(({ desk, sight, moment }) => {
        const { history } = query;
        const wanted = { store: params.id, ...(history !== undefined && { history }) };
        return storeShow(desk, wanted, sight, moment);
      })(served, { query }),
  }),
  route({
    method: 'get',
    path: '/api/book',
    does: 'The daybook: every entry, with what became of it; the youngest ones.',
    schema: 'book',
    query: {
      ...SIGHT_QUERY,
      day: dayOfQuery.exactOptional(),
      kind: z.enum([...formKinds, ...Object.keys(COMMAND_OF_KIND)]).exactOptional(),
      store: z.string().min(1).max(80).exactOptional(),
      find: z.string().min(1).max(200).exactOptional().describe('letters that stand in the line'),
      most: countOfQuery.exactOptional(),
    },
    answer: bookSheet,
    example: { query: { day: 'D9', most: '5' } },
    run: looking(({ desk, sight, moment, query }) => {
      const { at: _at, 'as-of': _asOf, ...wanted } = query;
      return showBook(desk, wanted, sight, moment);
    }),
  }),
  route({
    method: 'get',
    path: '/api/findings',
    does: 'Every finding of the book, also those that Today shows no more.',
    schema: 'findings',
    query: SIGHT_QUERY,
    answer: z.strictObject({ findings: z.array(finding) }),
    run: looking(async ({ desk, sight, moment }) =>
      changed(await allFindings(desk, sight, moment), (findings) => ({ findings })),
    ),
  }),
  route({
    method: 'get',
    path: '/api/quirks',
    does: 'What readings have taught, a sentence each, with the entries that taught it.',
    schema: 'quirks',
    query: SIGHT_QUERY,
    answer: quirksSheet,
    run: looking(({ desk, sight, moment }) => quirks(desk, sight, moment)),
  }),
  route({
    method: 'get',
    path: '/api/since',
    does: 'What came into the book since a time, or since an office entered something last.',
    schema: 'since',
    query: {
      by: office.exactOptional(),
      from: z.string().min(1).max(60).exactOptional().describe('a time; it counts before `by`'),
    },
    answer: sinceSheet,
    example: { query: { from: 'D40' } },
    run: (served, { query }) =>
      served.look(async (desk) => {
        const moment = served.moment(query.by === undefined ? {} : { by: query.by });
        const start =
          query.from === undefined
            ? await lastEnteredMs(desk, moment.by)
            : await readPastTime(desk, moment, { text: query.from, field: 'from' });
        return start.ok ? since(desk, { atMs: start.value }, moment) : start;
      }),
  }),
];

const FORMS: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/day-form',
    does: 'The form of the next day line: each meter with its last value and the range that is usual.',
    schema: 'day-form',
    answer: dayFormShape,
    run: (served) => served.look((desk) => dayForm(desk, served.moment())),
  }),
  route({
    method: 'get',
    path: '/api/offices',
    does: 'Names that fields of a request take: offices, stores aboard, ports, units, grades, hoses, instruments.',
    schema: 'names',
    answer: namesShape,
    run: (served) => served.look(bookNames),
  }),
  route({
    method: 'get',
    path: '/api/kinds/{kind}',
    does: 'The form of an entry kind: its fields, what each of them takes, and which are needed.',
    schema: 'kind-form',
    params: { kind: z.string().min(1).max(80) },
    answer: kindFormShape,
    example: { params: { kind: 'sample' } },
    run: (_served, { params }) => Promise.resolve(findForm(params.kind)),
  }),
  route({
    method: 'get',
    path: '/api/units',
    does: 'Every unit that an amount may carry.',
    schema: 'units',
    answer: unitsShape,
    run: () => Promise.resolve({ ok: true, value: { units: UNITS.map(unitLine) } }),
  }),
];

function unitLine({ name, sign, dimension, alsoWritten }: (typeof UNITS)[number]) {
  return { name, sign, dimension, alsoWritten };
}

export const READS: readonly Route[] = [...SHEETS, ...FORMS];
