// Table of the addresses of the inbox: what waits, one line, taking and dropping it; and tables that are brought in.
import * as z from 'zod';
import {
  type Answer,
  importTable,
  inboxDrop,
  inboxList,
  inboxShow,
  inboxTake,
  type Moment,
  readZone,
  type TableOptions,
} from '../../../desk/index.ts';
import type { TableSheet } from '../../../papers/index.ts';
import { readTable } from '../../workers/index.ts';
import type { ServedBook } from '../served-book.ts';
import { droppedSheet, inboxLine, inboxSheet, tableSheet, takenSheet } from '../shapes/inbox.ts';
import { whoSpeaks } from '../shapes/log-request.ts';
import { type Route, route } from './route.ts';

const ref = z.string().min(1).max(80).describe('a line that waits: corrie:34');
const cell = z.string().max(1000);
const sentence = z.string().min(1).max(1000);

const takeFields = z.strictObject({
  unit: z.string().min(1).max(20).exactOptional().describe('the unit of its bare number'),
  cells: z
    .record(z.string().min(1).max(200), cell)
    .exactOptional()
    .describe('cells anew, by heading or meaning'),
  happened: sentence.exactOptional(),
  late: sentence.exactOptional(),
  dryRun: z.boolean().exactOptional(),
});

const tableOptions = z.strictObject({
  shape: z.enum(['days', 'acts']).exactOptional(),
  decimal: z.enum(['comma', 'point']).exactOptional(),
  dates: z.enum(['day-first', 'month-first']).exactOptional(),
  zone: z
    .string()
    .max(20)
    .refine((text) => readZone(text) !== null)
    .exactOptional()
    .describe('the clock of the table: +05:30, or UTC'),
  dayOneDays: z.int().min(-4_000_000).max(4_000_000).exactOptional(),
  columns: z.record(z.string().min(1).max(200), cell).exactOptional(),
});

function momentOf(served: ServedBook, { by }: { readonly by?: string }): Moment {
  return served.moment(by === undefined ? {} : { by });
}

const ofKept = (data: unknown): 200 | 201 => ((data as { kept: boolean }).kept ? 201 : 200);
const ofTable = (data: unknown): 200 | 201 => {
  const { dryRun, entries, waiting } = data as TableSheet;
  return !dryRun && entries + waiting > 0 ? 201 : 200;
};

const WAITING: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/inbox',
    does: 'Lines that wait for a unit, a store or a decision, the oldest first.',
    schema: 'inbox',
    query: { all: z.enum(['yes']).exactOptional().describe('those that are settled, too') },
    answer: inboxSheet,
    run: (served, { query }) => served.look((desk) => inboxList(desk, { all: query.all === 'yes' })),
  }),
  route({
    method: 'get',
    path: '/api/inbox/{ref}',
    does: 'One line that waits, whole.',
    schema: 'inbox-line',
    params: { ref },
    answer: inboxLine,
    example: { params: { ref: 'corrie:192' } },
    run: (served, { params }) => served.look((desk) => inboxShow(desk, params.ref)),
  }),
  route({
    method: 'post',
    path: '/api/inbox/{ref}/take',
    does: 'Takes a line into the book with what was missing, or shows what it would become.',
    schema: 'inbox-taken',
    params: { ref },
    body: z.strictObject({ fields: takeFields, by: whoSpeaks.by }),
    answer: takenSheet,
    keeps: true,
    statusOf: ofKept,
    example: { params: { ref: 'corrie:192' }, body: { fields: { unit: 'lb', dryRun: true } } },
    run: (served, { params, body }) =>
      served.change((desk) =>
        inboxTake(desk, momentOf(served, body), { ref: params.ref, fields: body.fields }),
      ),
  }),
  route({
    method: 'post',
    path: '/api/inbox/{ref}/drop',
    does: 'Drops a line with a reason; it stays readable.',
    schema: 'inbox-dropped',
    params: { ref },
    body: z.strictObject({
      reason: z.string().max(2000),
      dryRun: z.boolean().exactOptional(),
      by: whoSpeaks.by,
    }),
    answer: droppedSheet,
    keeps: true,
    statusOf: ofKept,
    example: { params: { ref: 'corrie:192' }, body: { reason: 'asked the planner', dryRun: true } },
    run: (served, { params, body }) =>
      served.change((desk) => {
        const { reason, dryRun } = body;
        const asked = { ref: params.ref, reason, ...(dryRun !== undefined && { dryRun }) };
        return inboxDrop(desk, momentOf(served, body), asked);
      }),
  }),
];

const TABLES: readonly Route[] = [
  route({
    method: 'post',
    path: '/api/import/table',
    does: 'Takes the rows of a table, or shows what each would become; doubtful ones wait in the inbox.',
    schema: 'imported-table',
    takesFile: true,
    body: z
      .strictObject({
        name: z.string().min(1).max(200).describe('the name of the file, for the findings'),
        text: z.string().exactOptional(),
        base64: z.base64().exactOptional().describe('the bytes of the file, where it is not read as text'),
        options: tableOptions.exactOptional(),
        sure: z.boolean().exactOptional().describe('many rows at once are meant'),
        late: sentence.exactOptional().describe('why rows of closed days come now'),
        dryRun: z.boolean().exactOptional(),
        by: whoSpeaks.by,
      })
      .refine(({ text, base64 }) => (text === undefined) !== (base64 === undefined), { path: ['text'] }),
    answer: tableSheet,
    keeps: true,
    statusOf: ofTable,
    example: {
      body: {
        name: 'rows.tsv',
        text: 'date\tstrokes\n2147-04-16\t430\n',
        options: { zone: 'UTC' },
        dryRun: true,
      },
    },
    run: async (served, { body }) => {
      const { name, text, base64, options, sure, late, dryRun } = body;
      const bytes = text === undefined ? Buffer.from(base64 ?? '', 'base64') : Buffer.from(text, 'utf8');
      // Read before its turn at the book comes: a file that takes long keeps nobody waiting.
      const read = await readTable(name, new Uint8Array(bytes));
      if (!read.ok) return badTable(read.finding);
      const request = {
        table: read.table,
        ...(options !== undefined && { options: declared(options) }),
        ...(sure !== undefined && { sure }),
        ...(late !== undefined && { late }),
        ...(dryRun !== undefined && { dryRun }),
      };
      return served.change((desk) => importTable(desk, momentOf(served, body), request));
    },
  }),
];

/** The zone is told as people write it. */
function declared({ zone, ...rest }: z.output<typeof tableOptions>): TableOptions {
  const zoneMin = zone === undefined ? null : readZone(zone);
  return zoneMin === null ? rest : { ...rest, zoneMin };
}

type Failed = Extract<Answer<never>, { ok: false }>;

function badTable(finding: Failed['findings'][number]): Failed {
  return { ok: false, problem: 'bad input', findings: [finding] };
}

export const INBOX: readonly Route[] = [...WAITING, ...TABLES];
