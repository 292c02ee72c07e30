// `import`: a table, a field log or an export of a book; an export makes a book where none is.
import { existsSync, rmSync } from 'node:fs';
import { exportHeader, type ImportResult, importLines, isTable } from '../../../desk/index.ts';
import { type ImportedSheet, importedText, leftOutText, wordFinding } from '../../../papers/index.ts';
import { namedPath } from '../book-path.ts';
import type { Call } from '../call.ts';
import { EXIT } from '../exit-code.ts';
import { importSheet } from '../import-sheet.ts';
import { linesOf, readBytes } from '../input-file.ts';
import { createFor } from '../new-book.ts';
import { type OpenBook, withBook, wordsContext } from '../open-book.ts';
import type { Sheet } from '../outcome.ts';
import { CliProblem, orStop, wrongUse } from '../problem.ts';
import { saysYes } from '../says-yes.ts';
import { shownPath } from '../shown-path.ts';
import { TABLE_FLAGS } from '../table-options.ts';
import { textOptions } from '../text-options.ts';
import { readDay } from '../whole-number.ts';

const NOTHING = 'Nothing was written.';

interface NewBook {
  readonly path: string;
  readonly header: { readonly site: string; readonly purpose: 'book' | 'practice' };
}

export async function run(call: Call): Promise<Sheet> {
  const until = call.text('until');
  const untilDay = until === undefined ? {} : { untilDay: readDay(until, '--until') };
  const input = await readBytes(call, call.arg(0));
  if (isTable(beginningOf(input.bytes))) return importSheet(call, input);
  holdTableFlags(call);
  const file = { name: input.name, text: input.text() };
  const lines = linesOf(file.text);
  const made = newBookFor(call, lines);
  const request = { file: file.name, lines, dryRun: call.has('dry-run'), sure: call.has('yes'), ...untilDay };
  return made === null ? intoBook(call, request) : asNewBook(call, request, made);
}

/** Text enough to tell a table from a log; bytes that are no text are no log. */
function beginningOf(bytes: Uint8Array): string {
  return new TextDecoder('utf-8').decode(bytes);
}

/** What only a table has is not silently passed over with a log. */
function holdTableFlags(call: Call): void {
  const flag = TABLE_FLAGS.find((name) => call.has(name));
  if (flag === undefined) return;
  throw wrongUse('flags-clash', { first: `--${flag}`, second: 'a field log or an export' });
}

function intoBook(call: Call, request: Request): Promise<Sheet> {
  return withBook(call, { write: !request.dryRun }, async (open) =>
    sheetOf(open, await importAsked(open, request), null),
  );
}

/** A file that turns out not to be taken leaves no empty book behind. */
async function asNewBook(call: Call, request: Request, { path, header }: NewBook): Promise<Sheet> {
  if (request.dryRun) {
    const reason = 'an export is taken whole or not at all; it has no preview';
    const finding = {
      code: 'line-not-taken',
      severity: 'error',
      where: { file: request.file },
      data: { reason },
      entries: [],
    } as const;
    throw new CliProblem(EXIT.wrongUse, [finding]);
  }
  createFor(call, path, header);
  try {
    return await withBook(
      call,
      { write: true, place: { path, named: true, fallback: false } },
      async (open) => sheetOf(open, await importAsked(open, { ...request, sure: true }), path),
    );
  } catch (error) {
    rmSync(path, { force: true });
    throw error;
  }
}

type Request = Parameters<typeof importLines>[2] & { readonly dryRun: boolean };

/** Many entries at once are asked about, where somebody sits in front of it. */
async function importAsked(open: OpenBook, request: Request): Promise<ImportResult> {
  const answer = await importLines(open.desk, open.moment, request);
  if (answer.ok || answer.problem !== 'ask first' || !open.call.mayAsk()) return orStop(answer);
  if (!(await saysYes(open.call, answer.findings))) throw new CliProblem(EXIT.wrongUse, [], [NOTHING]);
  return orStop(await importLines(open.desk, open.moment, { ...request, sure: true }));
}

/** The book that an export is to make: only where a path was named and nothing is there. */
function newBookFor(call: Call, lines: readonly string[]): NewBook | null {
  const read = exportHeader(lines);
  if (read !== null && !read.ok) throw new CliProblem(EXIT.badInput, [read.finding]);
  const path = namedPath(call);
  if (read === null || path === undefined || existsSync(path)) {
    if (call.has('site'))
      throw wrongUse('flag-needed', { flag: '--book NEW', command: 'import', because: SITE_WANTS });
    return null;
  }
  return { path, header: { ...read.value, site: call.text('site') ?? read.value.site } };
}

const SITE_WANTS =
  'A site is named for a book that the import makes: an export, and a path where nothing is yet.';

async function sheetOf(open: OpenBook, result: ImportResult, made: string | null): Promise<Sheet> {
  const context = await wordsContext(open.desk);
  const notTaken = result.notTaken.map((finding) => wordFinding(finding, context));
  const shown = made === null ? null : shownPath(open.call.terminal.cwd, made);
  const data: ImportedSheet = { ...result, notTaken, made: shown };
  return {
    schema: 'imported',
    data,
    text: (options) => importedText(data, options),
    beside: notTaken,
    talk: notTaken.length === 0 ? [] : [leftOutText(notTaken, textOptions(open.call, 'stderr')).trimEnd()],
    findings: [...data.findings, ...notTaken],
  };
}
