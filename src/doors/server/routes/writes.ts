// Table of the addresses that add to the book.
import * as z from 'zod';
import { closeDay, importLines, log } from '../../../desk/index.ts';
import { type KeptSheet, wordFinding } from '../../../papers/index.ts';
import { importedSheet } from '../shapes/acts.ts';
import { logRequest, requestWith, whoSpeaks } from '../shapes/log-request.ts';
import { keptSheet } from '../shapes/sheets.ts';
import { type Route, route } from './route.ts';
import { momentOf } from './speaks.ts';

/** Something that was kept is there now; what was only tried is not. */
const ofKept = (data: unknown): 200 | 201 => ((data as KeptSheet).kept ? 201 : 200);
const ofAdded = (data: unknown): 200 | 201 =>
  (data as { added: number; dryRun: boolean }).added > 0 && !(data as { dryRun: boolean }).dryRun ? 201 : 200;

export const WRITES: readonly Route[] = [
  route({
    method: 'post',
    path: '/api/log',
    does: 'Enters what happened, or shows what it would change.',
    schema: 'kept',
    body: z.strictObject({ request: logRequest, with: requestWith.exactOptional(), ...whoSpeaks }),
    answer: keptSheet,
    keeps: true,
    statusOf: ofKept,
    example: { body: { request: { what: 'drink', amount: '8' }, with: { dryRun: true } } },
    run: (served, { body }) =>
      served.change((desk) => log(desk, momentOf(served, desk, body), body.request, body.with ?? {})),
  }),
  route({
    method: 'post',
    path: '/api/book/close',
    does: 'Closes a day: its figures are kept as they are believed now.',
    schema: 'kept',
    body: z.strictObject({
      day: z.int().min(0).max(99_999).exactOptional(),
      dryRun: z.boolean().exactOptional(),
      ...whoSpeaks,
    }),
    answer: keptSheet,
    keeps: true,
    statusOf: ofKept,
    example: { body: { dryRun: true } },
    run: (served, { body }) =>
      served.change((desk) => {
        const { by: _by, second: _second, ...request } = body;
        return closeDay(desk, momentOf(served, desk, body), request);
      }),
  }),
  route({
    method: 'post',
    path: '/api/import',
    does: 'Takes the lines of a field log or of an export of a book; what is in the book already is not added twice.',
    schema: 'imported',
    takesFile: true,
    body: z
      .strictObject({
        name: z.string().min(1).max(200).describe('the name of the file, for the findings'),
        text: z.string().exactOptional(),
        base64: z.base64().exactOptional().describe('the bytes of the file, where it is not read as text'),
        options: z
          .strictObject({
            untilDay: z.int().min(0).max(99_999).exactOptional(),
            sure: z.boolean().exactOptional().describe('many entries at once are meant'),
          })
          .exactOptional(),
        dryRun: z.boolean().exactOptional(),
        by: whoSpeaks.by,
      })
      .refine(({ text, base64 }) => (text === undefined) !== (base64 === undefined), {
        path: ['text'],
      }),
    answer: importedSheet,
    keeps: true,
    statusOf: ofAdded,
    example: {
      body: {
        name: 'field-log.jsonl',
        text: '{"id":"X1","t":"2147-04-15T20:30Z","day":46,"kind":"manifest_note","by":"planner","text":"Pannier 10 brings 400 L of water"}',
        dryRun: true,
      },
    },
    run: (served, { body }) =>
      served.change(async (desk) => {
        const text = body.text ?? Buffer.from(body.base64 ?? '', 'base64').toString('utf8');
        const { untilDay, sure } = body.options ?? {};
        const answer = await importLines(desk, momentOf(served, desk, body), {
          file: body.name,
          lines: linesOf(text),
          ...(untilDay !== undefined && { untilDay }),
          ...(sure !== undefined && { sure }),
          ...(body.dryRun !== undefined && { dryRun: body.dryRun }),
        });
        if (!answer.ok) return answer;
        const context = await served.wordsContext();
        const notTaken = answer.value.notTaken.map((each) => wordFinding(each, context));
        return { ok: true, value: { ...answer.value, notTaken, made: null } };
      }),
  }),
];

/** Lines without their ends; the empty one behind the last end is none. */
function linesOf(text: string): string[] {
  const lines = text.split('\n');
  if (lines.at(-1) === '') lines.pop();
  return lines;
}
