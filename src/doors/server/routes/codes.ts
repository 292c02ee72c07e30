// Table of the addresses of codes: who has one, setting one, and the keeper of codes for programs of the same user.
import * as z from 'zod';
import { codeList, setCode } from '../../../desk/index.ts';
import { codeRequest, codesSheet, keeperAnswers, keeperAsks } from '../shapes/code.ts';
import { portAnswer } from '../shapes/port.ts';
import { keptSheet } from '../shapes/sheets.ts';
import { looking } from './book-port.ts';
import { type Route, route } from './route.ts';

type CodeRequest = z.output<typeof codeRequest>;

/** Codes of others that were given with a new one, by office. */
function givenIn({ office, oldCode, lost }: CodeRequest): ReadonlyMap<string, string> {
  const given: readonly (readonly [string, string | undefined])[] =
    lost === undefined
      ? [[office, oldCode]]
      : [
          [lost.by, lost.byCode],
          [lost.second, lost.secondCode],
        ];
  return new Map(given.flatMap(([each, code]) => (code === undefined ? [] : [[each, code] as const])));
}

const PAGES: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/codes',
    does: 'Which offices have a code by which they confirm, and since when.',
    schema: 'codes',
    answer: codesSheet,
    run: (served) => served.look((desk) => codeList(desk, served.moment())),
  }),
  route({
    method: 'post',
    path: '/api/codes',
    does: 'Sets the code of an office; an older one has to be given, or is lost and set anew by two others.',
    schema: 'kept',
    body: codeRequest,
    answer: keptSheet,
    keeps: true,
    statusOf: () => 201,
    example: { body: { office: 'medic', code: '73915' } },
    run: (served, { body }) =>
      served.change((desk) => {
        const { office, code, lost } = body;
        const own = givenIn(body);
        const moment = served.moment();
        served.codePace.take(moment.nowUtcMs, own.size + 1);
        const setting =
          lost === undefined ? { office } : { office, by: lost.by, lost: { second: lost.second } };
        return setCode(desk, moment, setting, { fresh: code, own });
      }),
  }),
];

const KEEPER: readonly Route[] = [
  route({
    method: 'post',
    path: '/api/book-port/codes',
    does: 'Which offices have a code, and which of them wait.',
    schema: 'port-codes',
    body: keeperAsks.holders,
    answer: portAnswer(keeperAnswers.holders),
    example: { body: { nowMs: 0, tries: 5, waitMs: 900_000 } },
    run: (served, { body }) => looking(served, (book) => book.codes.holders(body)),
  }),
  route({
    method: 'post',
    path: '/api/book-port/code-has',
    does: 'Whether an office has a code.',
    schema: 'port-code-has',
    body: keeperAsks.has,
    answer: portAnswer(z.boolean()),
    example: { body: { office: 'keeper' } },
    run: (served, { body }) => looking(served, (book) => book.codes.has(body.office)),
  }),
  route({
    method: 'post',
    path: '/api/book-port/code-check',
    does: 'Whether it is the code of an office; the try is counted.',
    schema: 'port-code-check',
    body: keeperAsks.check,
    answer: portAnswer(keeperAnswers.check),
    example: {
      body: { office: 'keeper', code: '73915', terms: { nowMs: 0, tries: 5, waitMs: 900_000 } },
    },
    run: (served, { body: { office, code, terms } }) =>
      looking(served, (book) => book.codes.check(office, code, terms)),
  }),
  route({
    method: 'post',
    path: '/api/book-port/code-used',
    does: 'Whether it is one of the last codes of an office.',
    schema: 'port-code-used',
    body: keeperAsks.used,
    answer: portAnswer(z.boolean()),
    example: { body: { office: 'keeper', code: '73915' } },
    run: (served, { body: { office, code } }) => looking(served, (book) => book.codes.wasUsed(office, code)),
  }),
  route({
    method: 'post',
    path: '/api/book-port/code-set',
    does: 'Holds a code ready for the entry that tells of it, which is appended next.',
    schema: 'port-code-set',
    body: keeperAsks.set,
    answer: portAnswer(z.null()),
    example: { body: { office: 'keeper', code: '73915', entryId: 'a' } },
    run: (served, { body: { office, code, entryId } }) =>
      looking(served, async (book) => {
        await book.codes.set(office, code, entryId);
        return null;
      }),
  }),
];

export const CODES: readonly Route[] = [...PAGES, ...KEEPER];
