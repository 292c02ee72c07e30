// The address of trends of what was measured.
import * as z from 'zod';
import { qualityTrend } from '../../../desk/index.ts';
import { trendSheet } from '../shapes/quality-trend.ts';
import { type Route, route } from './route.ts';
import { SIGHT_QUERY, sightOf } from './sight-query.ts';

const name = z.string().min(1).max(80);

export const TREND: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/quality/trend',
    does: 'One parameter over time at one place, with limits, control limits and what bad stores share; without a parameter what was measured.',
    schema: 'quality-trend',
    query: {
      ...SIGHT_QUERY,
      parameter: name.exactOptional().describe('TOC, silver, plate count …'),
      store: name.exactOptional(),
      point: name.exactOptional().describe('a sampling point'),
      grade: name.exactOptional().describe('all stores that were of this grade'),
    },
    answer: trendSheet,
    example: { query: { parameter: 'TOC', point: 'product' } },
    run: (served, { query }) =>
      served.look(async (desk) => {
        const moment = served.moment();
        const sight = await sightOf(desk, moment, query);
        if (!sight.ok) return sight;
        const { at: _at, 'as-of': _asOf, ...wanted } = query;
        return qualityTrend(desk, wanted, sight.value, moment);
      }),
  }),
];
