// Table of the addresses of the calculators: their forms, their answers, and the condensate day by day.
import * as z from 'zod';
import { condensateSheet as condensate, reckonForms as forms, reckonOver } from '../../../desk/index.ts';
import type { ServedBook } from '../served-book.ts';
import { condensateSheet, reckonForms, reckonSheet } from '../shapes/reckon.ts';
import { type Route, route } from './route.ts';
import { SIGHT_QUERY, sightOf } from './sight-query.ts';

const MOST_FIELDS = 40;

export const RECKON: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/reckon',
    does: 'The calculators as forms: fields, units, what is taken where nobody fills one in, an example.',
    schema: 'reckon-forms',
    answer: reckonForms,
    run: async () => ({ ok: true, value: forms() }),
  }),
  route({
    method: 'post',
    path: '/api/reckon/{calculator}',
    does: 'Reckons from what is given and from what the book knows; nothing is kept.',
    schema: 'reckoning',
    params: { calculator: z.string().min(1).max(40) },
    query: SIGHT_QUERY,
    body: z.strictObject({
      fields: z
        .record(z.string().min(1).max(40), z.string().max(200))
        .refine((fields) => Object.keys(fields).length <= MOST_FIELDS, `at most ${MOST_FIELDS} fields`)
        .describe('as they would be typed, each with its unit: {"volume": "22L"}'),
    }),
    answer: reckonSheet,
    example: { params: { calculator: 'oxygen' }, body: { fields: { people: '4', share: '77%' } } },
    run: (served: ServedBook, { params, query, body }) =>
      served.look(async (desk) => {
        const moment = served.moment();
        const sight = await sightOf(desk, moment, query);
        if (!sight.ok) return sight;
        return await reckonOver(desk, { what: params.calculator, fields: body.fields }, sight.value, moment);
      }),
  }),
  route({
    method: 'get',
    path: '/api/condensate',
    does: 'Condensate day by day: what should have come by what was known then, what came, what is missing.',
    schema: 'condensate',
    query: SIGHT_QUERY,
    answer: condensateSheet,
    run: (served: ServedBook, { query }) =>
      served.look(async (desk) => {
        const moment = served.moment();
        const sight = await sightOf(desk, moment, query);
        return sight.ok
          ? await condensate(desk, { sight: sight.value, moment, query: { days: null } })
          : sight;
      }),
  }),
];
