// Table of the addresses of limits: what is in force, the sets, a choice and a typed figure.
import * as z from 'zod';
import {
  chooseLimits,
  limitSetShow,
  limitSets,
  limitsInForce,
  type RequestWith,
  typeLimit,
} from '../../../desk/index.ts';
import type { ServedBook } from '../served-book.ts';
import {
  limitSetSheet,
  limitSetsSheet,
  limitsChosenSheet,
  limitsSheet,
  limitTypedSheet,
} from '../shapes/limits.ts';
import { whoSpeaks } from '../shapes/log-request.ts';
import { type Route, route } from './route.ts';
import { SIGHT_QUERY, sightOf } from './sight-query.ts';

const name = z.string().min(1).max(120);
const set = name.describe('a set of limits: national-aesthetic-limits');
const sentence = z.string().min(1).max(1000);

const files = z
  .array(z.strictObject({ file: z.string().min(1).max(200), text: z.string().max(1_000_000) }))
  .max(20)
  .exactOptional()
  .describe('sets of your own, as docs/limit-sets.md tells');

const how = {
  sure: z.boolean().exactOptional().describe('yes to what it would hold'),
  dryRun: z.boolean().exactOptional(),
  late: sentence.exactOptional(),
  by: whoSpeaks.by,
};

interface How {
  readonly sure?: boolean;
  readonly dryRun?: boolean;
  readonly late?: string;
  readonly by?: string;
}

function moreOf({ sure, dryRun, late }: How): RequestWith {
  return {
    ...(sure !== undefined && { sure }),
    ...(dryRun !== undefined && { dryRun }),
    ...(late !== undefined && { late }),
  };
}

const momentOf = (served: ServedBook, { by }: How) => served.moment(by === undefined ? {} : { by });
const ofKept = (data: unknown): 200 | 201 => ((data as { kept: boolean }).kept ? 201 : 200);

export const LIMITS: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/limits',
    does: 'The limits that bear on release, set by set, and which of them are off.',
    schema: 'limits',
    query: SIGHT_QUERY,
    answer: limitsSheet,
    run: (served, { query }) =>
      served.look(async (desk) => {
        const moment = served.moment();
        const sight = await sightOf(desk, moment, query);
        return sight.ok ? limitsInForce(desk, sight.value, moment) : sight;
      }),
  }),
  route({
    method: 'get',
    path: '/api/limits/sets',
    does: 'Every set of limits that can be chosen: rows with a figure, rows that are off.',
    schema: 'limit-sets',
    answer: limitSetsSheet,
    run: (served) => served.look((desk) => limitSets(desk, served.moment())),
  }),
  route({
    method: 'get',
    path: '/api/limits/sets/{id}',
    does: 'One set whole.',
    schema: 'limit-set',
    params: { id: set },
    answer: limitSetSheet,
    example: { params: { id: 'national-aesthetic-limits' } },
    run: (served, { params }) => served.look((desk) => limitSetShow(desk, params.id, served.moment())),
  }),
  route({
    method: 'post',
    path: '/api/limits/choose',
    does: 'Chooses sets of limits, or shows which stores that would hold, what stays free, and what cannot be met.',
    schema: 'limits-chosen',
    takesFile: true,
    body: z.strictObject({
      sets: z.array(set).max(50),
      rows: z
        .array(name)
        .max(2000)
        .exactOptional()
        .describe('only these rows; else all that the sets require'),
      exposureDays: z.number().positive().exactOptional(),
      only: z.boolean().exactOptional().describe('instead of what is in force, and not beside it'),
      reason: sentence.exactOptional(),
      files,
      ...how,
    }),
    answer: limitsChosenSheet,
    keeps: true,
    statusOf: ofKept,
    example: { body: { sets: ['national-aesthetic-limits'], rows: ['silver most'], dryRun: true } },
    run: (served, { body }) =>
      served.change((desk) => {
        const { sure: _sure, dryRun: _dry, late: _late, by: _by, ...choice } = body;
        return chooseLimits(desk, momentOf(served, body), choice, moreOf(body));
      }),
  }),
  route({
    method: 'post',
    path: '/api/limits/type',
    does: 'Types the figure of a row that is off from a copy of the rule, or shows what that would do.',
    schema: 'limit-typed',
    takesFile: true,
    body: z.strictObject({
      set,
      row: name,
      atLeast: name.exactOptional().describe('with its unit'),
      atMost: name.exactOptional().describe('with its unit: 0.4mg/L'),
      basis: name.exactOptional(),
      copy: z.string().min(1).max(1000).describe('title, edition, page'),
      files,
      ...how,
    }),
    answer: limitTypedSheet,
    keeps: true,
    statusOf: ofKept,
    example: {
      body: {
        set: 'crewed-water-standard',
        row: 'silver most',
        atMost: '0.4mg/L',
        copy: 'the standard, edition 2, table 4',
        dryRun: true,
      },
    },
    run: (served, { body }) =>
      served.change((desk) => {
        const { sure: _sure, dryRun: _dry, late: _late, by: _by, ...typed } = body;
        return typeLimit(desk, momentOf(served, body), typed, moreOf(body));
      }),
  }),
];
