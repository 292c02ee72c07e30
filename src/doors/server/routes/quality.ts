// Table of the addresses of samples, results, holds and the medic's queue.
import * as z from 'zod';
import {
  type Answer,
  addResult,
  addSample,
  type Desk,
  holdAct,
  holdList,
  holdShow,
  type Moment,
  qualityToday,
  type Sight,
  sampleList,
  sampleShow,
} from '../../../desk/index.ts';
import type { ServedBook } from '../served-book.ts';
import { requestWith, whoSpeaks } from '../shapes/log-request.ts';
import {
  holdSheet,
  holdsSheet,
  qualitySheet,
  resultSheet,
  sampleSheet,
  samplesSheet,
} from '../shapes/quality.ts';
import { holdRequest, resultRequest, sampleRequest } from '../shapes/quality-request.ts';
import { keptSheet } from '../shapes/sheets.ts';
import { type Route, route } from './route.ts';
import { SIGHT_QUERY, sightOf } from './sight-query.ts';
import { momentOf } from './speaks.ts';

const id = z.string().min(1).max(80);

function looking<T>(
  served: ServedBook,
  query: { readonly at?: string; readonly 'as-of'?: string },
  work: (desk: Desk, sight: Sight, moment: Moment) => Promise<Answer<T>>,
): Promise<Answer<T>> {
  return served.look(async (desk) => {
    const moment = served.moment();
    const sight = await sightOf(desk, moment, query);
    return sight.ok ? work(desk, sight.value, moment) : sight;
  });
}

/** Something that was kept is there now; what was only tried is not. */
const ofKept = (data: unknown): 200 | 201 => ((data as { readonly kept: boolean }).kept ? 201 : 200);

const READING: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/quality',
    does: 'The medic’s queue: what is due, what waits for a release and who waits on it, what is parked, ends soon or is off.',
    schema: 'quality',
    query: SIGHT_QUERY,
    answer: qualitySheet,
    example: { query: { at: 'D14' } },
    run: (served, { query }) => looking(served, query, qualityToday),
  }),
  route({
    method: 'get',
    path: '/api/samples',
    does: 'Samples, how each stands, and what is due.',
    schema: 'samples',
    query: SIGHT_QUERY,
    answer: samplesSheet,
    run: (served, { query }) =>
      looking(served, query, (desk, sight, moment) => sampleList(desk, {}, sight, moment)),
  }),
  route({
    method: 'get',
    path: '/api/samples/{id}',
    does: 'One sample: its figures against the limits, and what a failing one touched.',
    schema: 'sample',
    params: { id },
    query: SIGHT_QUERY,
    answer: sampleSheet,
    example: { params: { id: 'SMP-03' }, query: { at: 'D14' } },
    run: (served, { params, query }) =>
      looking(served, query, (desk, sight, moment) => sampleShow(desk, { sample: params.id }, sight, moment)),
  }),
  route({
    method: 'get',
    path: '/api/holds',
    does: 'All holds that are open, and what waits for them.',
    schema: 'holds',
    query: SIGHT_QUERY,
    answer: holdsSheet,
    example: { query: { at: 'D14' } },
    run: (served, { query }) => looking(served, query, holdList),
  }),
  route({
    method: 'get',
    path: '/api/holds/{id}',
    does: 'One hold: what its water touched, where that came from, what waits for it, and the ways out. Who drank is never in it.',
    schema: 'hold',
    params: { id },
    query: SIGHT_QUERY,
    answer: holdSheet,
    example: { params: { id: 'Q-01' }, query: { at: 'D14' } },
    run: (served, { params, query }) =>
      looking(served, query, (desk, sight, moment) => holdShow(desk, { hold: params.id }, sight, moment)),
  }),
];

const withAndWho = { with: requestWith.exactOptional(), ...whoSpeaks };

const WRITING: readonly Route[] = [
  route({
    method: 'post',
    path: '/api/samples',
    does: 'Enters samples that were drawn, or shows what that would change.',
    schema: 'kept',
    body: z.strictObject({ request: sampleRequest, ...withAndWho }),
    answer: keptSheet,
    keeps: true,
    statusOf: ofKept,
    example: { body: { request: { of: ['R2'] }, with: { dryRun: true } } },
    run: (served, { body }) =>
      served.change((desk) => addSample(desk, momentOf(served, desk, body), body.request, body.with ?? {})),
  }),
  route({
    method: 'post',
    path: '/api/results',
    does: 'Enters a result; with dryRun what a failing one touched and what holding it changes. A failing one is kept only with a word on what is held.',
    schema: 'result',
    body: z.strictObject({ request: resultRequest, ...withAndWho }),
    answer: resultSheet,
    keeps: true,
    statusOf: ofKept,
    example: {
      body: { request: { of: 'R2', figures: { silver: '0.03 mg/L' } }, with: { dryRun: true, sure: true } },
    },
    run: (served, { body }) =>
      served.change((desk) => addResult(desk, momentOf(served, desk, body), body.request, body.with ?? {})),
  }),
  route({
    method: 'post',
    path: '/api/holds',
    does: 'Sets a hold, or takes a way out of one: add, release, waive, downgrade, treat, park, aside.',
    schema: 'kept',
    body: z.strictObject({ request: holdRequest, ...withAndWho }),
    answer: keptSheet,
    keeps: true,
    statusOf: ofKept,
    example: {
      body: {
        request: { act: 'add', stores: ['C-02'], reason: 'smells of plastic' },
        with: { dryRun: true },
      },
    },
    run: (served, { body }) =>
      served.change((desk) => holdAct(desk, momentOf(served, desk, body), body.request, body.with ?? {})),
  }),
];

export const QUALITY: readonly Route[] = [...READING, ...WRITING];
