// The import of a table: read in a thread of its own, shown or taken, what is doubtful kept in the inbox.
import { importTable, type Table, type TableImport } from '../../desk/index.ts';
import { type TableSheet, tableText, waitTalk } from '../../papers/index.ts';
import { readTable } from '../workers/index.ts';
import type { Call } from './call.ts';
import { EXIT } from './exit-code.ts';
import type { InputBytes } from './input-file.ts';
import { type OpenBook, withBook } from './open-book.ts';
import type { Sheet } from './outcome.ts';
import { CliProblem, orStop, wrongUse } from './problem.ts';
import { saysYes } from './says-yes.ts';
import { tableOptionsOf } from './table-options.ts';

const NOTHING = 'Nothing was written.';

export async function importSheet(call: Call, { name, bytes }: InputBytes): Promise<Sheet> {
  for (const flag of ['until', 'site'])
    if (call.has(flag)) throw wrongUse('flags-clash', { first: `--${flag}`, second: 'a table' });
  const options = tableOptionsOf(call);
  const late = call.text('late');
  const request = {
    options,
    dryRun: call.has('dry-run'),
    sure: call.has('yes'),
    ...(late !== undefined && { late }),
  };
  const table = await tableOf(name, bytes);
  return await withBook(call, { write: !request.dryRun }, async (open) =>
    sheetOf(await asked(open, { ...request, table })),
  );
}

async function tableOf(name: string, bytes: Uint8Array): Promise<Table> {
  const read = await readTable(name, bytes);
  if (read.ok) return read.table;
  throw new CliProblem(EXIT.badInput, [read.finding]);
}

/** Many lines at once are asked about, where somebody sits in front of it. */
async function asked(open: OpenBook, request: TableImport): Promise<TableSheet> {
  const answer = await importTable(open.desk, open.moment, request);
  if (answer.ok || answer.problem !== 'ask first' || !open.call.mayAsk()) return orStop(answer);
  if (!(await saysYes(open.call, answer.findings))) throw new CliProblem(EXIT.wrongUse, [], [NOTHING]);
  return orStop(await importTable(open.desk, open.moment, { ...request, sure: true }));
}

function sheetOf(sheet: TableSheet): Sheet {
  return {
    schema: 'imported-table',
    data: sheet,
    text: (options) => tableText(sheet, options),
    talk: sheet.waiting === 0 || sheet.dryRun ? [] : [waitTalk(sheet.waiting)],
    findings: [...sheet.findings, ...sheet.preview.flatMap(({ reasons }) => reasons)],
  };
}
