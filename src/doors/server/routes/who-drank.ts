// The address of who drank of held water: it opens with the medic's own code alone, and is in no other sheet.
import * as z from 'zod';
import { holdShow, openedByMedic } from '../../../desk/index.ts';
import { figure } from '../shapes/figures.ts';
import { type Route, route } from './route.ts';

const drankLines = z.strictObject({
  hold: z.string(),
  drank: z.array(
    z.strictObject({
      at: z.string(),
      person: z.string().nullable().describe('null: counted, and nobody named'),
      from: z.string(),
      volume: figure,
      suspect: figure,
      ref: z.string(),
    }),
  ),
});

export const WHO_DRANK: readonly Route[] = [
  route({
    method: 'post',
    path: '/api/holds/{id}/drank',
    does: 'Who drank of the water of a hold, and when; only with the code of the medic. A try is counted.',
    schema: 'hold-drank',
    params: { id: z.string().min(1).max(80) },
    body: z.strictObject({ code: z.string().min(1).max(40) }),
    answer: drankLines,
    example: { params: { id: 'Q-01' }, body: { code: '73915' } },
    run: (served, { params, body }) =>
      served.change(async (desk) => {
        const moment = served.moment();
        served.codePace.take(moment.nowUtcMs, 1);
        const open = await openedByMedic(desk, body.code, moment);
        if (!open.ok) return open;
        const key = { opens: async () => true };
        const query = { hold: params.id, drank: true, key };
        const sheet = await holdShow(desk, query, { kind: 'now' }, moment);
        if (!sheet.ok) return sheet;
        return { ok: true, value: { hold: sheet.value.hold.hold, drank: sheet.value.drank ?? [] } };
      }),
  }),
];
