// Table of the addresses of papers: as parts, as one HTML file for print, or as a text.
import * as z from 'zod';
import { PAPER_NAMES, paper } from '../../../desk/index.ts';
import { documentHtml, documentText, paperFileName } from '../../../papers/index.ts';
import { paperAnswer } from '../shapes/document.ts';
import { type Route, route } from './route.ts';
import { SIGHT_QUERY, sightOf } from './sight-query.ts';

const name = z.string().min(1).max(80);

/** A text that goes into a file is as wide as a page of plain print. */
const WIDTH = 80;

export const PAPERS: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/papers/{paper}',
    does: 'One paper: of a sample, a store, a hold or a parameter. Who drank what is in none.',
    schema: 'paper',
    params: { paper: z.enum(PAPER_NAMES) },
    query: {
      ...SIGHT_QUERY,
      of: name.describe('the sample, store, hold or parameter'),
      tests: z.string().min(1).max(400).exactOptional().describe('of a blank sample sheet, commas between'),
      store: name.exactOptional().describe('of a trend'),
      point: name.exactOptional().describe('of a trend'),
      grade: name.exactOptional().describe('of a trend'),
      form: z.enum(['document', 'html', 'text']).exactOptional().describe('document where it is left out'),
      size: z.enum(['A4', 'Letter']).exactOptional().describe('of the HTML'),
    },
    answer: paperAnswer,
    example: { params: { paper: 'hold-notice' }, query: { of: 'Q-01', at: 'D14', form: 'html' } },
    run: (served, { params, query }) =>
      served.look(async (desk) => {
        const moment = served.moment();
        const sight = await sightOf(desk, moment, query);
        if (!sight.ok) return sight;
        const { at: _at, 'as-of': _asOf, form, size, tests, ...wanted } = query;
        const asked = {
          ...wanted,
          ...(tests !== undefined && { tests: tests.split(',').map((test) => test.trim()) }),
        };
        const made = await paper(desk, params.paper, { query: asked, sight: sight.value, moment });
        if (!made.ok) return made;
        const document = made.value;
        const text = { width: WIDTH, style: 'screen', colour: false, units: 'L' } as const;
        return {
          ok: true,
          value: {
            fileName: paperFileName(document, 'html'),
            document: form === undefined || form === 'document' ? document : null,
            html: form === 'html' ? documentHtml(document, { size: size ?? 'A4', units: 'L' }) : null,
            text: form === 'text' ? documentText(document, text) : null,
          },
        };
      }),
  }),
];
