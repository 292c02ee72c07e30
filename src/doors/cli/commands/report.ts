// `report list` and `report show`: the papers that a book can give.
import { PAPER_NAMES, type PaperName, type PaperQuery, paper, quirks } from '../../../desk/index.ts';
import {
  documentHtml,
  documentTable,
  documentText,
  type PaperDocument,
  type PaperSize,
  paperFileName,
  quirksText,
  reportsText,
  tablesOf,
} from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { namesOf } from '../names-of.ts';
import { type OpenBook, withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { orStop, wrongUse } from '../problem.ts';
import { sightOf } from '../sight.ts';
import { textOptions } from '../text-options.ts';

/** Papers by name; `report list` says what each is. */
const REPORTS = [...PAPER_NAMES, 'quirks'] as const;

export function run(call: Call): Promise<Outcome> {
  if (call.command.path[1] === 'list') return Promise.resolve(listed);
  return show(call);
}

const listed: Outcome = {
  schema: 'reports',
  data: { reports: REPORTS },
  text: (options) => reportsText(REPORTS, options),
};

function show(call: Call): Promise<Outcome> {
  const name = call.arg(0);
  const found = PAPER_NAMES.find((each) => each === name);
  if (found === undefined && name !== 'quirks')
    throw wrongUse('flag-value-wrong', notOneOf('REPORT', name, REPORTS));
  if (found !== undefined) return showPaper(call, found);
  return withBook(call, { write: false }, async ({ desk, moment }) => {
    const sheet = orStop(await quirks(desk, await sightOf(call, desk, moment), moment));
    return { schema: 'quirks', data: sheet, text: (options) => quirksText(sheet, options) };
  });
}

function notOneOf(flag: string, received: string, wanted: readonly string[]) {
  return { flag, received: received.slice(0, 60), wanted: [...wanted], nearest: [] };
}

function showPaper(call: Call, name: PaperName): Promise<Outcome> {
  const size = sizeOf(call);
  holdForms(call);
  const of = call.arg(1);
  if (of === '')
    throw wrongUse('argument-missing', {
      argument: 'NAME',
      command: `report show ${name}`,
      example: EXAMPLES[name],
    });
  const query: PaperQuery = {
    of,
    ...(call.has('tests') && { tests: namesOf(call.text('tests')) }),
    ...given(call, 'store', 'point', 'grade'),
  };
  return withBook(call, { write: false }, (open) => made(open, name, { query, size }));
}

const EXAMPLES: Readonly<Record<PaperName, string>> = {
  'sample-sheet': 'waterwright report show sample-sheet R2',
  certificate: 'waterwright report show certificate C-05',
  'hold-notice': 'waterwright report show hold-notice Q-01',
  'hold-release': 'waterwright report show hold-release Q-01',
  'trend-sheet': 'waterwright report show trend-sheet TOC --point product',
};

/** One place and one form at a time. */
function holdForms(call: Call): void {
  call.holdApart('store', 'point');
  call.holdApart('store', 'grade');
  call.holdApart('point', 'grade');
  call.holdApart('html', 'csv');
  for (const form of ['html', 'csv'] as const) {
    call.holdApart(form, 'json');
    call.holdApart(form, 'plain');
  }
}

function sizeOf(call: Call): PaperSize {
  const typed = call.text('paper') ?? 'A4';
  const size = SIZES.find((each) => each.toLowerCase() === typed.toLowerCase());
  if (size === undefined) throw wrongUse('flag-value-wrong', notOneOf('--paper', typed, SIZES));
  return size;
}

const SIZES = ['A4', 'Letter'] as const;

function given<const Name extends string>(
  call: Call,
  ...names: readonly Name[]
): { readonly [K in Name]?: string } {
  const found = names.flatMap((name) => {
    const text = call.text(name);
    return text === undefined ? [] : [[name, text] as const];
  });
  return Object.fromEntries(found) as { readonly [K in Name]?: string };
}

async function made(
  { call, desk, moment }: OpenBook,
  name: PaperName,
  { query, size }: { readonly query: PaperQuery; readonly size: PaperSize },
): Promise<Outcome> {
  const sight = await sightOf(call, desk, moment);
  const document = orStop(await paper(desk, name, { query, sight, moment }));
  if (call.has('html')) {
    const { units } = textOptions(call, 'stdout');
    return { raw: [documentHtml(document, { size, units })], fileName: paperFileName(document, 'html') };
  }
  if (call.has('csv')) return tableOf(call, document);
  return { schema: 'paper', data: document, text: (options) => documentText(document, options) };
}

function tableOf(call: Call, document: PaperDocument): Outcome {
  const tables = tablesOf(document);
  const typed = call.text('table');
  const table = typed === undefined ? tables[0] : tables.find(({ name }) => name === typed);
  if (table === undefined)
    throw wrongUse(
      'flag-value-wrong',
      notOneOf(
        '--table',
        typed ?? '',
        tables.map(({ name }) => name),
      ),
    );
  return { raw: [documentTable(table)], fileName: paperFileName(document, 'csv') };
}
