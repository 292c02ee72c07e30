// Table of the addresses of the purifier beds.
import * as z from 'zod';
import { bedList, bedShow } from '../../../desk/index.ts';
import type { ServedBook } from '../served-book.ts';
import { bedSheet, bedsSheet } from '../shapes/beds.ts';
import { type Route, route } from './route.ts';
import { SIGHT_QUERY, sightOf } from './sight-query.ts';

export const BEDS: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/beds',
    does: 'The purifier beds: how much of their life is used, and when the first limit is reached behind them.',
    schema: 'beds',
    query: SIGHT_QUERY,
    answer: bedsSheet,
    run: (served: ServedBook, { query }) =>
      served.look(async (desk) => {
        const moment = served.moment();
        const sight = await sightOf(desk, moment, query);
        return sight.ok ? await bedList(desk, sight.value, moment) : sight;
      }),
  }),
  route({
    method: 'get',
    path: '/api/beds/{id}',
    does: 'One bed: what is read behind it, when a limit is reached, and whether to change it now.',
    schema: 'bed',
    params: { id: z.string().min(1).max(120).describe('its name in the list: lead') },
    query: SIGHT_QUERY,
    answer: bedSheet,
    example: { params: { id: 'lead' }, query: { at: 'D32' } },
    run: (served: ServedBook, { params, query }) =>
      served.look(async (desk) => {
        const moment = served.moment();
        const sight = await sightOf(desk, moment, query);
        return sight.ok ? await bedShow(desk, { bed: params.id }, sight.value, moment) : sight;
      }),
  }),
];
